#include "windwall/fields/address.hpp"

#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/problems.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

using Paths = std::vector<Path>;

void collect(const GroupType& group, void* owner, const Path& here, Paths& found);

void collect_tagged(const TaggedType& tagged, void* member, const Path& here, Paths& found) {
    collect(*tagged.types[tagged.index(member)], tagged.get(member), here, found);
}

void collect_parts(const Row& row, void* list, const Path& here, Paths& found) {
    const auto& parts = *row.member.parts;
    for (std::size_t at = 0; at < parts.size(list); ++at) {
        void* part = parts.part(list, at);
        const Path::Step step{&row, at, parts.tagged->index(part)};
        collect_tagged(*parts.tagged, part, here.then(step, joined(row.key, parts.id(list, at))),
                       found);
    }
}

void collect_list(const Row& row, const std::vector<double>& list, const Path& here, Paths& found) {
    for (std::size_t at = 0; at < list.size(); ++at)
        found.push_back(here.then({&row, at, 0}, joined(row.key, std::to_string(at + 1))));
}

void collect_row(const Row& row, void* owner, const Path& here, Paths& found) {
    const auto& type = row.member;
    void* member = type.of(owner);
    switch (type.shape) {
        case FieldType::number:
        case FieldType::optional_number: found.push_back(here.then({&row}, row.key)); break;
        case FieldType::list:
            collect_list(row, *static_cast<std::vector<double>*>(member), here, found);
            break;
        case FieldType::group:
            collect(*type.group, member, here.then({&row}, row.key), found);
            break;
        case FieldType::optional_group:
            if (type.group->peek(member))
                collect(*type.group, type.group->open(member), here.then({&row}, row.key), found);
            break;
        case FieldType::tagged:
            collect_tagged(*type.tagged, member,
                           here.then({&row, 0, type.tagged->index(member)}, row.key), found);
            break;
        case FieldType::parts: collect_parts(row, member, here, found); break;
        default: break;
    }
}

void collect(const GroupType& group, void* owner, const Path& here, Paths& found) {
    for (const auto& row : group.rows())
        collect_row(row, owner, here, found);
}

// What is nearest: first among the addresses that share the longest beginning.
std::string near_to(std::string_view address, const Paths& paths) {
    std::vector<std::string_view> words;
    for (const auto& path : paths)
        words.push_back(path.text());
    const auto whole = nearest(address, words);
    if (!whole.empty()) return "; did you mean \"" + std::string(whole) + "\"?";
    const auto last = address.substr(address.rfind('/') + 1);
    for (const auto word : words)
        if (word.ends_with("/" + std::string(last)))
            return "; did you mean \"" + std::string(word) + "\"?";
    return {};
}

bool leads_to(std::string_view address, const Paths& paths) {
    const auto beginning = std::string(address) + "/";
    return std::ranges::any_of(
        paths, [&](const Path& path) { return path.text().starts_with(beginning); });
}

}  // namespace

std::vector<Path> all_addresses(const GroupType& root, const void* example) {
    Paths found;
    // Only looked at; the types underneath know no const.
    collect(root, const_cast<void*>(example), {}, found);
    return found;
}

Expected<Path> resolve(const GroupType& root, const void* example, std::string_view address) {
    const auto paths = all_addresses(root, example);
    const auto found = std::ranges::find(paths, address, &Path::text);
    if (found != paths.end()) return *found;
    auto sentence = in_quotes(address) + " is no number of this vehicle";
    if (leads_to(address, paths))
        return Expected<Path>::refused(sentence +
                                       ": it is a part or a list; name one of its numbers");
    return Expected<Path>::refused(sentence + near_to(address, paths));
}

}  // namespace windwall::fields
