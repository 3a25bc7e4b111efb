#include "windwall/fields/units.hpp"
#include "windwall/road/body.hpp"
#include "windwall/road/tyres.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <string>

using namespace windwall;

namespace {

double si(double number, const fields::Unit& unit) {
    return (number + std::stod(std::string(unit.shift))) * std::stod(std::string(unit.factor)) /
           std::stod(std::string(unit.divisor));
}

template <class T>
class Group : public testing::Test {};
struct ByName {
    template <class T>
    static std::string GetName(int) {
        return std::is_same_v<T, road::Body> ? "body" : "tyres";
    }
};
using Both = testing::Types<road::Body, road::Tyres>;
TYPED_TEST_SUITE(Group, Both, ByName);

}  // namespace

TYPED_TEST(Group, HasRowsThatCanBeReadAndExplained) {
    std::set<std::string_view> keys;
    const std::regex word("[a-z][a-z0-9_]*");
    for (const fields::Row& row : TypeParam::rows()) {
        EXPECT_TRUE(keys.insert(row.key).second) << row.key;
        EXPECT_TRUE(std::regex_match(std::string(row.key), word)) << row.key;
        EXPECT_FALSE(row.sentence.empty()) << row.key;
        if (row.member.type == fields::FieldType::text) continue;
        EXPECT_EQ(row.need == fields::Need::with_default, !row.source.empty()) << row.key;
        if (row.member.type == fields::FieldType::choice) continue;
        EXPECT_NO_THROW(fields::unit_of(row.measure)) << row.key;
        EXPECT_LT(row.range.low, row.range.high) << row.key;
    }
}

TYPED_TEST(Group, HasDefaultsInsideTheirRanges) {
    TypeParam made;
    for (const fields::Row& row : TypeParam::rows()) {
        if (row.need != fields::Need::with_default || row.member.type != fields::FieldType::number)
            continue;
        const double number = *static_cast<double*>(row.member.of(&made));
        const fields::Unit& unit = fields::unit_of(row.measure);
        EXPECT_GE(number, si(row.range.low, unit)) << row.key;
        EXPECT_LE(number, si(row.range.high, unit)) << row.key;
        EXPECT_LT(row.sigma, row.range.high - row.range.low) << row.key;
    }
}
