#include "windwall/fields/field_path.hpp"
#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/problems.hpp"
#include "windwall/fields/visit.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

using Paths = std::vector<FieldPath>;

void collect(const GroupType& group, const void* object, const FieldPath& here, Paths& found);

struct Collector {
    const Row& row;
    const FieldPath& here;
    Paths& found;

    void operator()(double) const { found.push_back(here.to(row)); }
    void operator()(const std::optional<double>&) const { found.push_back(here.to(row)); }
    void operator()(const std::vector<double>& list) const {
        for (std::size_t at = 0; at < list.size(); ++at)
            found.push_back(here.to(row, at));
    }
    void operator()(const GroupRef<const void>& group) const {
        if (const auto* inside = group.get()) collect(group.type, inside, here.into({&row}), found);
    }
    void operator()(const TaggedRef<const void>& tagged) const { part(tagged, {}); }
    void operator()(const PartsRef<const void>& parts) const {
        for (std::size_t at = 0; at < parts.size(); ++at)
            part(parts.part(at), parts.id(at));
    }
    void part(const TaggedRef<const void>& part, const std::string& id) const {
        collect(part.group(), part.get(), here.into({&row, id, part.index()}), found);
    }
    void operator()(const auto&) const {}
};

void collect(const GroupType& group, const void* object, const FieldPath& here, Paths& found) {
    for (const auto& row : group.rows())
        visit(row, object, Collector{row, here, found});
}

// What is nearest: first among the addresses that share the longest beginning.
std::string near_to(std::string_view address, const Paths& paths) {
    std::vector<std::string_view> words;
    for (const auto& path : paths)
        words.push_back(path.text());
    const auto whole = nearest(address, words);
    if (!whole.empty()) return "; did you mean \"" + std::string(whole) + "\"?";
    const auto last = "/" + std::string(address.substr(address.rfind('/') + 1));
    const auto found = std::ranges::find_if(words, [&](auto word) { return word.ends_with(last); });
    return found == words.end() ? "" : "; did you mean \"" + std::string(*found) + "\"?";
}

bool leads_to(std::string_view address, const Paths& paths) {
    return std::ranges::any_of(
        paths, [&](const FieldPath& path) { return is_within(path.text(), address); });
}

}  // namespace

std::vector<FieldPath> all_numbers(const GroupType& root, const void* example) {
    Paths found;
    collect(root, example, {}, found);
    return found;
}

std::string no_such_number(const GroupType& root, const void* example, std::string_view address) {
    const auto paths = all_numbers(root, example);
    const auto sentence = in_quotes(address) + " is no number of this vehicle";
    if (leads_to(address, paths))
        return sentence + ": it is a part or a list; name one of its numbers";
    return sentence + near_to(address, paths);
}

}  // namespace windwall::fields
