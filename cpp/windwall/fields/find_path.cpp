#include "windwall/fields/field_path.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/visit.hpp"

#include <algorithm>
#include <charconv>

namespace windwall::fields {
namespace {

std::string_view take_word(std::string_view& address) {
    const auto end = std::min(address.find('/'), address.size());
    const auto word = address.substr(0, end);
    address.remove_prefix(std::min(end + 1, address.size()));
    return word;
}

const Row* find_row(const GroupType& group, std::string_view key) {
    const auto rows = group.rows();
    const auto found = std::ranges::find(rows, key, &Row::key);
    return found == rows.end() ? nullptr : &*found;
}

// The number of an entry, from "1"; nothing where the word is none or the list is shorter.
std::optional<std::size_t> entry_of(std::string_view word, std::size_t size) {
    std::size_t number = 0;
    const auto end = word.data() + word.size();
    const auto read = std::from_chars(word.data(), end, number);
    const bool whole = read.ec == std::errc() && read.ptr == end && !word.starts_with('0');
    if (!whole || number < 1 || number > size) return std::nullopt;
    return number - 1;
}

// Walks an address down an example, row by row.
struct Walk {
    const Row& row;
    const FieldPath& here;
    std::string_view rest;

    using Found = std::optional<FieldPath>;

    static Found down(const GroupType& group, const void* object, const FieldPath& here,
                      std::string_view rest) {
        const auto* row = find_row(group, take_word(rest));
        return row ? visit(*row, object, Walk{*row, here, rest}) : std::nullopt;
    }
    // An empty optional group is looked into as if a default one were there.
    Found operator()(const GroupRef<const void>& group) const {
        const void* inside = group.get() ? group.get() : group.type.fresh();
        return down(group.type, inside, here.into({&row}), rest);
    }
    Found operator()(const TaggedRef<const void>& tagged) const {
        return down(tagged.group(), tagged.get(), here.into({&row, {}, tagged.index()}), rest);
    }
    Found operator()(const PartsRef<const void>& parts) const {
        auto behind = rest;
        const auto at = parts.find(take_word(behind));
        if (!at) return std::nullopt;
        const auto part = parts.part(*at);
        return down(part.group(), part.get(), here.into({&row, parts.id(*at), part.index()}),
                    behind);
    }
    Found operator()(const std::vector<double>& list) const {
        if (rest.empty()) return here.to(row);
        const auto entry = entry_of(rest, list.size());
        return entry ? Found(here.to(row, entry)) : std::nullopt;
    }
    Found operator()(const auto&) const {
        return rest.empty() ? Found(here.to(row)) : std::nullopt;
    }
};

using Refusal = Expected<FieldPath>;

}  // namespace

Expected<FieldPath> find_path(const GroupType& root, const void* example,
                              std::string_view address) {
    // The text is compared too, since a slash too many is no address.
    if (auto found = Walk::down(root, example, {}, address); found && found->text() == address)
        return *std::move(found);
    return Refusal::refused(no_such_number(root, example, address));
}

Expected<FieldPath> find_number(const GroupType& root, const void* example,
                                std::string_view address) {
    auto found = find_path(root, example, address);
    if (!found || (found->is_number() && found->owner(example))) return found;
    return Refusal::refused(no_such_number(root, example, address));
}

}  // namespace windwall::fields
