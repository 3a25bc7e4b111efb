#include "windwall/fields/exact.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <random>
#include <string>

namespace {

using namespace windwall::fields;

const Unit& unit(Dimension dimension, std::string_view text) { return unit_of({dimension, text}); }

TEST(NumberLength, FollowsTheGrammarOfJson) {
    for (const std::string_view good : {"0", "-0", "12", "1.35", "-2.5e1", "1e5", "1E+05", "0.0"})
        EXPECT_EQ(number_length(good), good.size()) << good;
    for (const std::string_view none : {"", "-", "+1", ".5", "01", "1.", "inf", "nan", "x", "-x"})
        EXPECT_EQ(number_length(none), 0u) << none;
    EXPECT_EQ(number_length("36 mm"), 2u);
    EXPECT_EQ(number_length("1e"), 1u);  // "1 e": the unit table refuses the rest
    EXPECT_EQ(number_length("1,234"), 1u);
}

TEST(Exact, OneRoundingIsAllThereIs) {
    EXPECT_EQ(to_si("1.6", unit(Dimension::length, "km")),
              to_si("1600", unit(Dimension::length, "m")));
    const auto& mm = unit(Dimension::length, "mm");
    const auto& cm = unit(Dimension::length, "cm");
    const auto& m = unit(Dimension::length, "m");
    for (int i = 1; i <= 1000; ++i) {
        const auto exact = to_si(std::to_string(i), mm);
        EXPECT_EQ(exact, static_cast<double>(i) / 1000);  // one correctly rounded division
        EXPECT_EQ(to_si(std::to_string(i) + "e-1", cm), exact);
        EXPECT_EQ(to_si(std::to_string(i) + "e-3", m), exact);
    }
}

TEST(Exact, InchesByTwoWaysAgree) {
    for (int i = 1; i <= 1000; ++i) {
        const auto millimetres = std::to_string(254 * i) + "e-1";
        EXPECT_EQ(to_si(std::to_string(i), unit(Dimension::length, "in")),
                  to_si(millimetres, unit(Dimension::length, "mm")));
    }
}

// The C library's strtod rounds correctly; so must scaling by one.
TEST(Exact, RoundsAsTheCLibraryDoes) {
    std::mt19937_64 random(1);
    const auto& one = unit(Dimension::number, "");
    for (int i = 0; i < 20000; ++i) {
        auto text = std::to_string(random() % 10000000000000000ull) + "." +
                    std::to_string(random()) + "e" +
                    std::to_string(static_cast<int>(random() % 560) - 300);
        EXPECT_EQ(to_si(text, one), std::strtod(text.c_str(), nullptr)) << text;
    }
}

TEST(Exact, NumbersBeyondDoublesAreNone) {
    const auto& one = unit(Dimension::number, "");
    EXPECT_FALSE(to_si("1e309", one));
    EXPECT_FALSE(to_si("1e400", one));
    EXPECT_FALSE(to_si("1e999999999999", one));
    EXPECT_FALSE(to_si("1e308", unit(Dimension::energy, "kWh")));
    EXPECT_FALSE(to_si("nan", one));
    EXPECT_FALSE(to_si("", one));
    EXPECT_EQ(to_si("1e-400", one), 0.0);
}

TEST(Exact, TemperaturesHaveAZeroPointAndDifferencesNone) {
    const auto& celsius = unit(Dimension::temperature, "degC");
    const auto& fahrenheit = unit(Dimension::temperature, "degF");
    EXPECT_EQ(to_si("33", celsius), 306.15);
    EXPECT_EQ(to_si("212", fahrenheit), 373.15);
    EXPECT_EQ(to_si("-40", fahrenheit), to_si("-40", celsius));
    EXPECT_EQ(to_si("9", fahrenheit, Counted::difference), 5.0);
    EXPECT_EQ(shortest(273.15, celsius), "0");
    EXPECT_EQ(shortest(306.15, celsius), "33");
    EXPECT_EQ(shortest(5, fahrenheit, Counted::difference), "9");
}

TEST(Shortest, ReadsBackBitForBitInEveryUnit) {
    std::mt19937_64 random(2);
    std::uniform_real_distribution<double> mantissa(-10, 10);
    std::uniform_int_distribution<int> exponent(-12, 12);
    for (const auto& each : all_units())
        for (int i = 0; i < 40; ++i) {
            const double any = mantissa(random) * std::pow(10.0, exponent(random));
            const double si = each.shift == "0" ? any : 200 + 50 * std::abs(mantissa(random));
            const auto text = shortest(si, each);
            EXPECT_EQ(to_si(text, each), si) << text << " " << each.text;
        }
}

TEST(Shortest, IsShort) {
    EXPECT_EQ(shortest(0.036, unit(Dimension::length, "mm")), "36");
    EXPECT_EQ(shortest(0.1, unit(Dimension::length, "mm")), "100");
    EXPECT_EQ(shortest(*to_si("4200", unit(Dimension::angular_speed, "rpm")),
                       unit(Dimension::angular_speed, "rpm")),
              "4200");
    EXPECT_EQ(shortest(1e-9, unit(Dimension::length, "m")), "1e-9");
    EXPECT_EQ(shortest(2.5e20), "2.5e20");
    EXPECT_EQ(shortest(-0.00012), "-0.00012");
    EXPECT_EQ(shortest(0.1), "0.1");
    EXPECT_EQ(shortest(0.0), "0");
}

TEST(Exact, ALongTextIsNoNumberHere) {
    const auto& metre = unit(Dimension::length, "m");
    EXPECT_TRUE(to_si("0." + std::string(398, '1'), metre));
    EXPECT_FALSE(to_si("0." + std::string(399, '1'), metre));
    EXPECT_FALSE(to_si(std::string(std::size_t{4} << 20, '1'), metre));
}

}  // namespace
