#include "windwall/fields/ids.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/row.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

bool is_word(std::string_view id) {
    const auto small = [](char letter) { return letter >= 'a' && letter <= 'z'; };
    const auto follows = [&](char letter) {
        return small(letter) || (letter >= '0' && letter <= '9') || letter == '_';
    };
    return !id.empty() && id.size() <= 64 && small(id.front()) && std::ranges::all_of(id, follows);
}

}  // namespace

void Ids::reserve(const GroupType& group) {
    if (!seen_.insert(&group).second) return;
    for (const auto& row : group.rows()) {
        reserve(row.key);
        for (const auto& column : row.columns)
            reserve(column.key);
        if (row.member.group) reserve(*row.member.group);
        if (row.member.tagged) reserve_types(*row.member.tagged);
        if (row.member.parts) reserve_types(*row.member.parts->tagged);
    }
}

void Ids::reserve_types(const TaggedType& tagged) {
    for (const auto* type : tagged.types)
        reserve(*type);
}

std::string Ids::word_violation(std::string_view id) {
    if (is_word(id)) return {};
    return in_quotes(id) +
           " is no id: small letters, digits and _ make one, and a letter begins it";
}

std::string Ids::violation(std::string_view id) const {
    if (auto wrong = word_violation(id); !wrong.empty()) return wrong;
    if (keys_.contains(id)) return in_quotes(id) + " is the name of a field, and no id";
    if (taken_.contains(id)) return in_quotes(id) + " is the id of a part already";
    return {};
}

}  // namespace windwall::fields
