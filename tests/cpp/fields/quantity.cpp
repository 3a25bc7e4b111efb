#include "windwall/fields/quantity.hpp"

#include "windwall/fields/readable.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace {

using namespace windwall::fields;

Quantity good(std::string_view text, Measure measure) {
    const auto reading = read_quantity(text, measure);
    EXPECT_TRUE(reading) << text << ": " << reading.violation;
    return reading ? *reading : Quantity{};
}

std::string bad(std::string_view text, Measure measure) {
    const auto reading = read_quantity(text, measure);
    EXPECT_FALSE(reading) << text;
    return reading.violation;
}

TEST(Quantity, IsANumberAndAUnit) {
    EXPECT_EQ(good("36 mm", length("mm")).value, 0.036);
    EXPECT_EQ(good("36mm", length("mm")).value, 0.036);
    EXPECT_EQ(good("  36   mm ", length("mm")).value, 0.036);
    EXPECT_EQ(good("1.35", number()).value, 1.35);
    EXPECT_EQ(good("82 %", number()).value, 0.82);
    EXPECT_EQ(good("-3e-1 m/s", speed("m/s")).value, -0.3);
    EXPECT_EQ(good("10 PS", power("kW")).value, 7354.9875);
    EXPECT_EQ(good("260 EUR", money("EUR")).value, 260);
    EXPECT_EQ(good("310 USD", money("EUR")).unit->text, "USD");
    EXPECT_EQ(good("12", labour("h")).value, 12);
    EXPECT_EQ(good("90 min", labour("h")).value, 1.5);
    EXPECT_FALSE(good("36 mm", length("mm")).sigma);
    EXPECT_EQ(good("36 mm", length("in")).text, "36 mm");
}

TEST(Quantity, SaysHowWellItIsKnown) {
    EXPECT_EQ(good("0 ± 1 m/s", speed("m/s")).sigma, 1);
    EXPECT_EQ(good("0.56 +/- 0.05 m2", area("m2")).sigma, 0.05);
    EXPECT_EQ(good("0.56±0.05m2", area("m2")).sigma, 0.05);
    EXPECT_EQ(good("38 kPa ± 5 %", gauge_pressure("kPa")).sigma, 1900);
    EXPECT_EQ(good("-38 kPa ± 5%", gauge_pressure("kPa")).sigma, 1900);
    EXPECT_EQ(good("35 ± 5 %", percent()).value, 0.35);
    EXPECT_EQ(good("35 ± 5 %", percent()).sigma, 0.05);
    EXPECT_EQ(good("0.82 ± 0.03", number()).sigma, 0.03);
    EXPECT_EQ(good("90 ± 9 degF", temperature("degC")).sigma, 5);
    EXPECT_EQ(good("260 ± 40 EUR", money("EUR")).sigma, 40);
    EXPECT_EQ(good("36 ± 0 mm", length("mm")).sigma, 0);
}

TEST(Quantity, AnUnclearPlusMinusIsRefusedWithTheChoices) {
    EXPECT_EQ(bad("35 % ± 5 %", percent()),
              "\"35 % ± 5 %\": the ± could mean points or a share of the value; write \"35 ± 5 %\" "
              "for points");
    EXPECT_NE(bad("0.82 ± 5 %", number()).find("write the value and its ± as plain numbers"),
              std::string::npos);
    EXPECT_NE(bad("30 degC ± 5 %", temperature("degC")).find("a temperature has no percentage"),
              std::string::npos);
    EXPECT_NE(bad("38 kPa ± 4 kPa", gauge_pressure("kPa")).find("one unit serves"),
              std::string::npos);
    bad("38 kPa ± 4", gauge_pressure("kPa"));
    bad("38 ± -4 kPa", gauge_pressure("kPa"));
    bad("38 ± kPa", gauge_pressure("kPa"));
    bad("38 ± 4 ± 4 kPa", gauge_pressure("kPa"));
}

TEST(Quantity, ANumberWithoutAUnitIsAskedForOne) {
    EXPECT_EQ(bad("86", length("mm")),
              "86 what? a length needs its unit; write for example \"86 mm\"");
    EXPECT_EQ(bad("35", percent()),
              "35 what? a percentage needs its unit; write for example \"35 %\"");
}

TEST(Quantity, NothingButNumbersIsRead) {
    for (const auto* text : {"",
                             " ",
                             "mm",
                             "inf mm",
                             "nan mm",
                             "NaN",
                             "-inf mm",
                             "+3 mm",
                             ".5 mm",
                             "5. mm",
                             "1,5 mm",
                             "1_000 mm",
                             "0x10 mm",
                             "3/4 in",
                             "9**9**9 mm",
                             "1+1 mm",
                             "1e mm",
                             "1e400 mm",
                             "1e999999999999 mm",
                             "1 mm mm",
                             "--1 mm",
                             "1 mm\n",
                             "1\tmm",
                             "１ mm"})
        bad(text, length("mm"));
    EXPECT_NE(bad("1,5 mm", length("mm")).find("a point, not a comma"), std::string::npos);
    EXPECT_NE(bad("1,5 mm", length("mm")).find("write for example \"1.5 mm\""), std::string::npos);
    EXPECT_NE(bad(std::string(1000, '1') + " mm", length("mm")).find("longer than 64"),
              std::string::npos);
    EXPECT_EQ(good("1" + std::string(60, '0') + " mm", length("mm")).value, 1e57);
}

TEST(Quantity, MessagesDoNotSteerTheScreen) {
    const auto sentence = bad("3 \x1b[31m\x07\u202e", length("mm"));
    for (const char letter : sentence)
        EXPECT_GE(static_cast<unsigned char>(letter), 0x20);
    EXPECT_EQ(sentence.find("\u202e"), std::string::npos);
}

constexpr Row speed_row = required("engine_speed", "n", {}, angular_speed("rpm"), {500, 6500}, "");

TEST(Quantity, RangesHoldWithBothEnds) {
    EXPECT_TRUE(read_quantity("6500 rpm", speed_row));
    EXPECT_TRUE(read_quantity("500 rpm", speed_row));
    EXPECT_EQ(read_quantity("6500.0001 rpm", speed_row).violation,
              "6500.0001 rpm is outside 500 to 6500 rpm");
    EXPECT_EQ(read_quantity("700 rad/s", speed_row).violation,
              "700 rad/s is outside 500 to 6500 rpm");
}

constexpr Row above_vacuum =
    required("manifold_pressure", "p", {}, absolute_pressure("kPa"), {20, 400}, "");
constexpr Row above_the_air = required("boost", "p", {}, gauge_pressure("kPa"), {-90, 300}, "");
constexpr Row between_two = required("drop", "dp", {}, pressure_difference("kPa"), {0, 20}, "");

TEST(Quantity, APressureMaySayWhereItCountsFrom) {
    EXPECT_EQ(read_quantity("103 kPa absolute", above_vacuum)->value, 103e3);
    EXPECT_EQ(read_quantity("15 ± 1 psi absolute", above_vacuum)->value,
              15 * 4.4482216152605 / 0.00064516);
    EXPECT_EQ(read_quantity("-5 kPa gauge", above_the_air)->value, -5e3);
    EXPECT_EQ(read_quantity("0.3 bar gauge", above_the_air)->value, 0.3e5);
    EXPECT_EQ(read_quantity("2 kPa", between_two)->value, 2e3);
}

TEST(Quantity, AWrongZeroPointIsToldWithWhatWasProbablyMeant) {
    const auto why = [](std::string_view text, const Row& row) {
        const auto reading = read_quantity(text, row);
        EXPECT_FALSE(reading) << text;
        return reading.violation;
    };
    EXPECT_EQ(why("29 kPa gauge", above_vacuum),
              "\"29 kPa gauge\": kPa gauge counts from the local air, and a pressure above vacuum "
              "is expected (Pa, hPa, mbar, kPa, bara, mmHg abs, inHg abs, psia); it is not "
              "converted, because that takes the air pressure of the day; write for example "
              "\"130 kPa absolute\"");
    EXPECT_NE(why("103 kPa absolute", above_the_air).find("write for example \"1.68 kPa gauge\""),
              std::string::npos);
    EXPECT_NE(why("14.3 psi", above_vacuum).find("write for example \"98.6 kPa absolute\""),
              std::string::npos);
    const auto difference = why("5 kPa gauge", between_two);
    EXPECT_NE(difference.find("a pressure difference is expected"), std::string::npos);
    EXPECT_NE(difference.find("between two places neither counts: leave it out; write for example "
                              "\"5.00 kPa\""),
              std::string::npos);
    // What cannot have been meant is not put into anybody's mouth.
    EXPECT_EQ(why("600 kPa absolute", above_the_air).find("498"), std::string::npos);
}

TEST(Quantity, TheRangeOfAPressureSaysWhereItCountsFrom) {
    EXPECT_EQ(range_text(above_vacuum), "20 to 400 kPa above vacuum");
    EXPECT_EQ(range_text(above_the_air), "-90 to 300 kPa above the local air");
    EXPECT_EQ(range_text(between_two), "0 to 20 kPa of difference");
}

TEST(Quantity, ANumberInSiIsRefusedWithBothReadings) {
    EXPECT_EQ(read_si(4200, speed_row).violation,
              "4200 rad/s is about 40107 rpm and outside 500 to 6500 rpm; write for example "
              "\"4200 rpm\"");
    EXPECT_EQ(read_si(400, speed_row)->value, 400);
    EXPECT_FALSE(read_si(std::nan(""), speed_row));
    EXPECT_FALSE(read_si(std::numeric_limits<double>::infinity(), speed_row));
}

TEST(Format, ReadsBack) {
    EXPECT_EQ(format(0.036, length("mm")), "36 mm");
    EXPECT_EQ(format(1.35, number()), "1.35");
    EXPECT_EQ(format(306.15, temperature("degC")), "33 degC");
    EXPECT_EQ(format(0.35, percent()), "35 %");
    EXPECT_EQ(format(1.23456789e-9, temperature("degC")), "1.23456789e-9 K");  // too fine in degC
    EXPECT_EQ(good(format(0.1 + 0.2, length("in")), length("in")).value, 0.1 + 0.2);
}

TEST(Readable, ShowsWhatMattersInTheReadersUnits) {
    EXPECT_EQ(readable(98400, absolute_pressure("kPa")), "98.4 kPa");
    EXPECT_EQ(readable(98400, absolute_pressure("kPa"), System::us), "14.3 psia");
    EXPECT_EQ(readable(38000, gauge_pressure("kPa"), System::us), "5.51 psig");
    EXPECT_EQ(readable(140 / 3.6, speed("km/h")), "140 km/h");
    EXPECT_EQ(readable(140 / 3.6, speed("km/h"), System::us), "87.0 mph");
    EXPECT_EQ(readable(12345, force("N")), "12345 N");
    EXPECT_EQ(readable(9.996, number()), "10.0");
    EXPECT_EQ(readable(0.036, length("in")), "36.0 mm");
    EXPECT_EQ(readable(0, number()), "0");
    EXPECT_EQ(readable(std::nan(""), number()), "unknown");
    EXPECT_EQ(readable(306.15, temperature("degC"), System::us), "91.4 degF");
}

TEST(Quantity, OfThingsThatAreCountedThereIsNoHalf) {
    const auto teeth = whole(required("teeth", "z", {}, number(), {6, 200}, "Teeth"));
    EXPECT_EQ(read_quantity("17", teeth)->value, 17);
    EXPECT_EQ(read_quantity("17.0", teeth)->value, 17);
    EXPECT_EQ(read_quantity("17.5", teeth).violation, "17.5 is outside the whole numbers 6 to 200");
    EXPECT_EQ(read_bare_number(17.5, teeth).violation,
              "17.5 is outside the whole numbers 6 to 200");
    EXPECT_FALSE(read_si(17.5, teeth));
    EXPECT_TRUE(read_quantity(example_text(teeth), teeth));
}

TEST(Quantity, IsRefusedByItsLengthBeforeAnyWorkIsDoneOnIt) {
    const auto row = required("bore", "D", {}, length("mm"), {8, 120}, "Bore");
    const auto refused = read_quantity(std::string(std::size_t{4} << 20, '1'), row);
    EXPECT_NE(refused.violation.find("longer than 64 characters; write for example"),
              std::string::npos);
}

}  // namespace
