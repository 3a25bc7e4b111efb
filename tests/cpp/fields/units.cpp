#include "windwall/fields/units.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/nearest.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <stdexcept>
#include <string>

namespace {

using namespace windwall::fields;

constexpr auto last_dimension = static_cast<int>(Dimension::labour);

TEST(Units, EveryDimensionHasSomeAndTheTableIsInTheirOrder) {
    EXPECT_TRUE(std::ranges::is_sorted(all_units(), {}, &Unit::dimension));
    for (int at = 0; at <= last_dimension; ++at) {
        const auto dimension = static_cast<Dimension>(at);
        EXPECT_FALSE(units_of(dimension).empty()) << name_of(dimension);
        EXPECT_FALSE(name_of(dimension).empty());
    }
}

TEST(Units, OneOfEachPhysicalDimensionIsTheUnitOfSi) {
    for (int at = 0; at <= last_dimension; ++at) {
        const auto is_si = [](const Unit& unit) {
            return unit.factor == "1" && unit.divisor == "1" && unit.shift == "0";
        };
        EXPECT_TRUE(std::ranges::any_of(units_of(static_cast<Dimension>(at)), is_si));
    }
}

TEST(Units, NoSpellingMeansTwoUnitsOfOneDimension) {
    std::set<std::pair<Dimension, std::string>> spellings;
    for (const auto& unit : all_units()) {
        std::string all = std::string(unit.text) + "|" + std::string(unit.aliases);
        for (std::size_t start = 0, end; start < all.size(); start = end + 1) {
            end = std::min(all.find('|', start), all.size());
            EXPECT_TRUE(spellings.insert({unit.dimension, all.substr(start, end - start)}).second)
                << all;
        }
    }
}

TEST(Units, EveryCounterpartExistsAndBelongsToTheOtherSystem) {
    for (const auto& unit : all_units()) {
        if (unit.other.empty()) continue;
        const auto* other = find_unit(unit.dimension, unit.other);
        ASSERT_TRUE(other) << unit.text;
        EXPECT_NE(other->system, unit.system) << unit.text;
    }
}

TEST(Units, NoAmbiguousSpellingIsInTheTable) {
    for (const auto& spelling : ambiguous_units())
        for (const auto& unit : all_units())
            EXPECT_NE(unit.text, spelling.text);
}

TEST(Units, SignsAreReadInEveryWayPeopleTypeThem) {
    EXPECT_EQ(find_unit(Dimension::area, "m²"), find_unit(Dimension::area, "m2"));
    EXPECT_EQ(find_unit(Dimension::area, "m^2"), find_unit(Dimension::area, "m2"));
    EXPECT_EQ(find_unit(Dimension::volume, "cm³"), find_unit(Dimension::volume, "cc"));
    EXPECT_EQ(find_unit(Dimension::torque, "N·m"), find_unit(Dimension::torque, "Nm"));
    EXPECT_EQ(find_unit(Dimension::torque, "N*m"), find_unit(Dimension::torque, "N m"));
    EXPECT_EQ(find_unit(Dimension::temperature, "°C"), find_unit(Dimension::temperature, "degC"));
    EXPECT_EQ(find_unit(Dimension::angle, "°"), find_unit(Dimension::angle, "deg"));
    EXPECT_FALSE(find_unit(Dimension::length, "M"));
    EXPECT_FALSE(find_unit(Dimension::length, ""));
}

TEST(Units, AFieldDecidesWhatPressureItTakes) {
    for (const auto* plain : {"kPa", "Pa", "hPa", "mbar"})
        for (const auto dimension : {Dimension::absolute_pressure, Dimension::gauge_pressure,
                                     Dimension::pressure_difference})
            EXPECT_TRUE(find_unit(dimension, plain)) << plain;
    for (const auto* plain : {"psi", "bar", "inHg", "mmHg", "inH2O"})
        EXPECT_FALSE(find_unit(Dimension::absolute_pressure, plain)) << plain;
    for (const auto* vacuum : {"psia", "bara", "kPa abs", "inHg abs"}) {
        EXPECT_TRUE(find_unit(Dimension::absolute_pressure, vacuum)) << vacuum;
        EXPECT_FALSE(find_unit(Dimension::gauge_pressure, vacuum)) << vacuum;
    }
    for (const auto* air : {"psig", "barg", "kPa gauge", "inHg gauge"}) {
        EXPECT_TRUE(find_unit(Dimension::gauge_pressure, air)) << air;
        EXPECT_FALSE(find_unit(Dimension::absolute_pressure, air)) << air;
    }
}

std::string why_not(std::string_view typed, Measure measure) {
    EXPECT_FALSE(find_unit(measure.dimension, typed)) << typed;
    return unit_complaint(typed, measure);
}

TEST(Units, RefusalsSayWhatToWrite) {
    EXPECT_EQ(
        why_not("psi", length("mm")),
        "psi is the unit of a pressure above the local air, and a length is expected (mm, cm, "
        "m, km, in, ft, mi)");
    EXPECT_EQ(why_not("mn", length("mm")),
              "mn is no unit known here; a length is expected (mm, cm, m, km, in, ft, mi); did you "
              "mean mm?");
    EXPECT_EQ(why_not("MM", length("mm")).substr(0, 2), "MM");
    EXPECT_EQ(why_not("gal", volume("L")), "gal could mean several things; say gal_us or gal_imp");
    EXPECT_EQ(why_not("lb-ft", torque("N m")), "lb-ft is written \"lbf ft\" here");
    EXPECT_EQ(why_not("lb", force("N")),
              "lb is the unit of a mass, and a force is expected (N, kN, kgf, lbf)");
    EXPECT_EQ(why_not("bar", absolute_pressure("kPa")),
              "bar does not say whether it counts from vacuum (bara) or from the local air (barg), "
              "and a pressure above vacuum is expected");
    EXPECT_EQ(why_not("inHg", absolute_pressure("kPa")),
              "inHg does not say whether it counts from vacuum (inHg abs) or from the local air "
              "(inHg gauge), and a pressure above vacuum is expected");
    EXPECT_NE(why_not("psig", absolute_pressure("kPa")).find("counts from the local air"),
              std::string::npos);
    EXPECT_NE(why_not("psia", gauge_pressure("kPa")).find("counts from vacuum"), std::string::npos);
    EXPECT_EQ(why_not("mm", number()),
              "mm is the unit of a length, and a plain number is expected");
}

TEST(Units, ARowThatNamesNoUnitOfItsDimensionIsABug) {
    EXPECT_THROW(unit_of(length("kg")), std::logic_error);
    EXPECT_THROW(unit_of(length("")), std::logic_error);
}

TEST(Nearest, FindsWhatWasMeant) {
    constexpr std::string_view words[] = {"drive_ratio", "bore", "mass", "leak_area"};
    EXPECT_EQ(nearest("drive_rato", words), "drive_ratio");
    EXPECT_EQ(nearest("ratio_drive", words), "");
    EXPECT_EQ(nearest("Bore", words), "bore");
    EXPECT_EQ(nearest("boer", words), "bore");
    EXPECT_EQ(nearest("mas", words), "mass");
    EXPECT_EQ(nearest("speed", words), "");
    EXPECT_EQ(nearest("", words), "");
    EXPECT_EQ(nearest(std::string(1000, 'b'), words), "");
}

}  // namespace
