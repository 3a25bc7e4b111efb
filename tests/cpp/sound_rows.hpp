#pragma once
#include "windwall/fields/ids.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/row_text.hpp"

#include <gtest/gtest.h>

#include <set>

/// Rows by themselves: nothing a reader needs is missing, and defaults keep their own rules.
namespace contract {

using namespace windwall::fields;

inline bool is_number(const Row& row) {
    return row.member.type == FieldType::number || row.member.type == FieldType::optional_number;
}

inline void expect_sound(const Row& row, const GroupType& owner) {
    EXPECT_TRUE(Ids(owner).violation(row.key).find("is no id") == std::string::npos)
        << "a key is made of small letters, digits and _";
    EXPECT_FALSE(row.sentence.empty());
    EXPECT_NE(row.sentence.back(), '.') << "the pages set the full stop";
    if (!is_number(row) && row.member.type != FieldType::list) return;
    EXPECT_NO_THROW(unit_of(row.measure));
    EXPECT_LT(row.range.low, row.range.high);
    EXPECT_GE(row.sigma, 0);
    EXPECT_LE(row.sigma, row.range.high - row.range.low);
    if (row.member.type != FieldType::number || row.need != Need::with_default) return;
    EXPECT_FALSE(row.source.empty()) << "a default has a source";
    const double usual = *static_cast<const double*>(row.member.usual());
    EXPECT_EQ(range_complaint(usual, row, default_of(row)), "");
}

/// All rows of a struct and of the structs inside it, and that each key stands once.
inline void expect_sound(const GroupType& group) {
    std::set<std::string_view> keys;
    for (const Row& row : group.rows()) {
        SCOPED_TRACE(row.key);
        EXPECT_TRUE(keys.insert(row.key).second) << "a key stands once";
        expect_sound(row, group);
        if (row.member.group) expect_sound(*row.member.group);
    }
}

}  // namespace contract
