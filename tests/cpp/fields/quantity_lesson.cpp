#include "windwall/fields/quantity_lesson.hpp"

#include "windwall/fields/meant_unit.hpp"
#include "windwall/fields/quantity.hpp"

#include <gtest/gtest.h>

#include <string>

namespace quantity_lesson {
namespace {

using namespace windwall::fields;

constexpr Row mass_row = required("mass", "m", {}, mass("kg"), {20, 5000}, "");
constexpr Row bore_row = required("bore", "D", {}, length("mm"), {8, 150}, "");
constexpr Row day_row = required("temperature", "T", {}, temperature("degC"), {-40, 60}, "");
constexpr Row air_row = required("pressure", "p", {}, absolute_pressure("kPa"), {45, 110}, "");
constexpr Row boost_row = required("boost", "p", {}, gauge_pressure("kPa"), {-90, 300}, "");
constexpr Row speed_row = required("speed", "v", {}, speed("km/h"), {5, 600}, "");
constexpr Row share_row = required("humidity", "h", {}, percent(), {0, 100}, "");
constexpr Row ratio_row = required("ratio", "r", {}, number(), {0.1, 40}, "");
constexpr Row cost_row = required("cost", "c", {}, money("EUR"), {0, 1e7}, "");
constexpr Row hours_row = required("hours", "h", {}, labour("h"), {0, 10000}, "");
constexpr Row torque_row = required("torque", "M", {}, torque("N m"), {1, 900}, "");

struct Wrong {
    const Row& row;
    const char* text;
    const char* says;   // the rule, or what is allowed
    const char* meant;  // what to write instead
};

class WrongQuantity : public testing::TestWithParam<Wrong> {};

TEST_P(WrongQuantity, IsToldWithItsRuleAndWhatWasProbablyMeant) {
    const auto& [row, text, says, meant] = GetParam();
    const auto read = read_quantity(text, row);
    ASSERT_FALSE(read) << text;
    EXPECT_NE(read.violation.find(says), std::string::npos) << read.violation;
    EXPECT_TRUE(read.violation.ends_with("; write for example " + std::string(meant)))
        << read.violation;
}

constexpr auto one_unit = "one unit serves the value and its ±";
constexpr auto spelt = "set off by ± or +/-";

INSTANTIATE_TEST_SUITE_P(
    Spread, WrongQuantity,
    testing::Values(Wrong{mass_row, "120 kg +- 10", spelt, R"("120 ± 10 kg")"},
                    Wrong{mass_row, "120 +- 10 kg", spelt, R"("120 ± 10 kg")"},
                    Wrong{mass_row, "348 +- 5", spelt, R"("348 ± 5 kg")"},
                    Wrong{mass_row, "120 kg ± 10", one_unit, R"("120 ± 10 kg")"},
                    Wrong{mass_row, "120 kg (+/- 10 kg)", one_unit, R"("120 ± 10 kg")"},
                    Wrong{mass_row, "120 kg ± 500 g", one_unit, R"("120 ± 0.5 kg")"},
                    Wrong{mass_row, "120 ± 10 % kg", "a percentage of the value follows the unit",
                          R"("120 kg ± 10 %")"},
                    Wrong{mass_row, "348 ± 5 ± 5 kg", "a value has one ±", R"("348 ± 5 kg")"},
                    Wrong{mass_row, "348-352 kg", "the middle and how far", R"("350 ± 2 kg")"},
                    Wrong{mass_row, "348 to 352 kg", "the middle and how far", R"("350 ± 2 kg")"},
                    Wrong{day_row, "33 C ± 1", one_unit, R"("33 ± 1 degC")"},
                    Wrong{share_row, "35 ± 5", "needs its unit", R"("35 ± 5 %")"},
                    Wrong{ratio_row, "7.6 +- 0.1", spelt, R"("7.6 ± 0.1")"}));

INSTANTIATE_TEST_SUITE_P(
    Number, WrongQuantity,
    testing::Values(Wrong{mass_row, "348,5 kg", "a point, not a comma", R"("348.5 kg")"},
                    Wrong{mass_row, "1,348 kg", "thousands by nothing", R"("1348 kg")"},
                    Wrong{bore_row, "1,348 cm", "thousands by nothing", R"("1.348 cm")"},
                    Wrong{cost_row, "260,- EUR", "a point, not a comma", R"("260 EUR")"},
                    Wrong{mass_row, "1 348 kg", "stand together", R"("1348 kg")"},
                    Wrong{bore_row, "3/4 in", "not fractions", R"("0.75 in")"},
                    Wrong{bore_row, "1 3/4 in", "not fractions", R"("1.75 in")"},
                    Wrong{bore_row, "3 cm 2 mm", "not two to be added", R"("3.2 cm")"},
                    Wrong{ratio_row, "7.6:1", "a ratio is stated as one number", R"("7.6")"},
                    Wrong{ratio_row, "7.6 to 1", "a ratio is stated as one number", R"("7.6")"},
                    Wrong{hours_row, "1:30 h", "not as on a clock", R"("1.5 h")"},
                    Wrong{mass_row, "about 348 kg", "starts with a digit", R"("348 kg")"},
                    Wrong{mass_row, "348. kg", "must follow the decimal point", R"("348 kg")"},
                    Wrong{mass_row, "348 kg\n", "nothing but blanks", R"("348 kg")"},
                    Wrong{mass_row, "", "there is nothing in it", R"("320 kg")"},
                    Wrong{mass_row, "nan kg", "nan is not a number", R"("320 kg")"},
                    Wrong{mass_row, "1e3e4 kg", "e4 kg is no unit", R"("320 kg")"}));

INSTANTIATE_TEST_SUITE_P(
    Unit, WrongQuantity,
    testing::Values(
        Wrong{mass_row, "768 lbs", R"(lbs is written "lb" here)", R"("768 lb")"},
        Wrong{mass_row, "348 kilo", "(g, kg, lb)", R"("348 kg")"},
        Wrong{mass_row, "348 kg.", "(g, kg, lb)", R"("348 kg")"},
        Wrong{day_row, "20 C", R"(C is written "degC" here)", R"("20 degC")"},
        Wrong{day_row, "68 F", R"(F is written "degF" here)", R"("68 degF")"},
        Wrong{day_row, "91", "needs its unit", R"("91 degF")"},
        Wrong{air_row, "14.7 PSI", "does not say whether it counts from vacuum", R"("14.7 psia")"},
        Wrong{air_row, "98.4 KPa", "KPa is no unit known here", R"("98.4 kPa")"},
        Wrong{boost_row, "4 PSI", "PSI is no unit known here", R"("4 psig")"},
        Wrong{boost_row, "0.3 bar +- 0.05", spelt, R"("0.3 ± 0.05 bar")"},
        Wrong{speed_row, "10 kmh", "(m/s, km/h", R"("10 km/h")"},
        Wrong{speed_row, "85 MPH", "(m/s, km/h", R"("85 mph")"},
        Wrong{speed_row, "85 miles/h", "(m/s, km/h", R"("85 mph")"},
        Wrong{bore_row, "30mm dia", "(mm, cm, m", R"("30 mm")"},
        Wrong{bore_row, "1.75 inches", "(mm, cm, m", R"("1.75 in")"},
        Wrong{bore_row, "30 milimeter", "(mm, cm, m", R"("30 mm")"},
        Wrong{share_row, "5 %%", "%% is no unit", R"("5 %")"},
        Wrong{share_row, "0.35", "needs its unit", R"("35 %" or "0.35 %")"},
        Wrong{ratio_row, "26 teeth", "a plain number is expected;", R"("26")"},
        Wrong{cost_row, "€260", "starts with a digit", R"("260 EUR")"},
        Wrong{cost_row, "20 $", "could mean several things",
              R"("20 USD", "20 CAD", "20 AUD" or "20 NZD")"},
        Wrong{cost_row, "a case of beer", "does not start with a number", R"("200 EUR")"},
        Wrong{hours_row, "2 days", "(h, min)", R"("5 h")"},
        Wrong{torque_row, "43 lb-ft", R"(lb-ft is written "lbf ft" here)", R"("43 lbf ft")"}));

INSTANTIATE_TEST_SUITE_P(
    Beyond, WrongQuantity,
    testing::Values(
        Wrong{mass_row, "12 k g", "; 12 kg would be outside 20 to 5000 kg", R"("320 kg")"},
        Wrong{mass_row, "5 kg 3 g", "; 5.003 kg would be outside 20 to 5000 kg", R"("320 kg")"},
        Wrong{air_row, "1,4 bar", "; 1.4 bara would be outside 45 to 110 kPa above vacuum",
              R"("78 kPa")"}));

TEST(QuantityLesson, AUnitThatChangesTheNumberIsNoAdvice) {
    EXPECT_TRUE(meant_units("mm", gauge_pressure("kPa")).empty());  // nor one of something else
    for (const auto* typed : {"t", "tonne", "oz"})
        EXPECT_TRUE(meant_units(typed, mass("kg")).empty()) << typed;
    EXPECT_TRUE(meant_units("Hz", angular_speed("rpm")).empty());
}

TEST(QuantityLesson, WhatNoDoubleHoldsIsNotReckonedWith) {
    for (const auto* text : {"1e308-1e309 kg", "1e400/1 kg", "1/1e-400 kg", "1e308 kg 1e308 kg",
                             "1e400:1", "1e308 ± 1e308 %", "1e400 ± 5 %", "-1e400 to 1e400 kg"}) {
        EXPECT_FALSE(read_quantity(text, mass_row)) << text;
        EXPECT_FALSE(read_quantity(text, ratio_row)) << text;
        EXPECT_FALSE(read_quantity(text, hours_row)) << text;
    }
}

TEST(QuantityLesson, NoShareIsSpokenOfWhereAPlainNumberIsExpected) {
    EXPECT_EQ(read_quantity("7.6 kg", ratio_row).violation,
              "\"7.6 kg\": kg is the unit of a mass, and a plain number is expected; write for "
              "example \"7.6\"");
}

TEST(QuantityLesson, WhatIsOfferedIsRead) {
    for (const auto* text : {"120 kg ± 500 g", "348-352 kg", "1,348 kg", "768 lbs", "348 kilos"}) {
        const auto said = read_quantity(text, mass_row).violation;
        const auto start = said.rfind("example \"") + 9;
        EXPECT_TRUE(read_quantity(said.substr(start, said.rfind('"') - start), mass_row)) << said;
    }
}

}  // namespace
}  // namespace quantity_lesson
