#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace windwall::fields {
namespace {

using Words = std::vector<std::string_view>;

bool contains(const Words& words, std::string_view word) {
    return std::ranges::find(words, word) != words.end();
}

Words all_keys(std::span<const Row> rows, const Known& known) {
    Words words = known;
    for (const auto& row : rows)
        words.push_back(row.key);
    return words;
}

Words stated_inside(const GroupType& group) {
    Words needed;
    for (const auto& row : group.rows())
        if (must_be_stated(row)) needed.push_back(row.key);
    return needed;
}

const Row* find_row(std::span<const Row> rows, std::string_view key) {
    const auto found = std::ranges::find(rows, key, &Row::key);
    return found == rows.end() ? nullptr : &*found;
}

std::string about(const Row& row) {
    return row.sentence.empty() ? "" : " (" + std::string(row.sentence) + ")";
}

std::string how_to_state(const Row& row) {
    const auto& member = row.member;
    if (member.type == FieldType::number)
        return "; write for example " + in_quotes(example_text(row));
    if (member.type == FieldType::choice) return "; it is one of " + choices(member.choice->names);
    if (member.type == FieldType::group) {
        const auto inside = stated_inside(*member.group);
        return inside.empty() ? "" : "; it needs " + choices(inside, " and ");
    }
    if (member.type == FieldType::tagged)
        return "; its kind is one of " + choices(member.tagged->kinds);
    return {};
}

std::string unknown_key(std::string_view key, std::string_view near, std::span<const Row> rows,
                        const Words& words) {
    const auto start = "there is no " + in_quotes(key) + " here";
    if (near.empty()) return start + "; the keys are " + choices(words, " and ");
    const auto* row = find_row(rows, near);
    return start + "; did you mean \"" + std::string(near) + "\"?" + (row ? about(*row) : "");
}

}  // namespace

bool must_be_stated(const Row& row) {
    if (row.need != Need::with_default) return row.need == Need::required;
    return row.member.type == FieldType::group && !stated_inside(*row.member.group).empty();
}

void check_keys(const Cursor& object, std::span<const Row> rows, const Known& known) {
    const auto words = all_keys(rows, known);
    const auto given = object.keys();
    Words free;
    std::ranges::copy_if(words, std::back_inserter(free),
                         [&](auto word) { return !contains(given, word); });
    Words meant;
    for (const auto key : given) {
        if (contains(words, key)) continue;
        if (object.findings().problems.full()) {
            object.complain_about_key(key, {});
            continue;
        }
        const auto near = nearest(key, free);
        meant.push_back(near);
        object.complain_about_key(key, unknown_key(key, near, rows, words));
    }
    for (const auto& row : rows) {
        if (!must_be_stated(row) || contains(given, row.key) || contains(meant, row.key)) continue;
        object.complain_about_key(row.key, "is missing" + about(row) + how_to_state(row));
    }
}

}  // namespace windwall::fields
