#include "windwall/road/top_speed.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::road;

namespace {

double demand(const Resistance& resistance, double speed, double wind = 0) {
    const double air = speed + wind;
    return (resistance.constant + resistance.square * air * std::abs(air)) * speed;
}

}  // namespace

TEST(TopSpeed, UsesUpThePower) {
    for (double power : {1.0, 500.0, 17e3, 5e5})
        for (double constant : {-200.0, -5.0, 0.0, 1e-6, 44.0, 1500.0})
            for (double square : {1e-3, 0.27, 2.0}) {
                const Resistance resistance{constant, square};
                const double speed = top_speed_for_power(power, resistance);
                const double scale = power + std::abs(constant) * speed;
                EXPECT_NEAR(demand(resistance, speed), power, 1e-12 * scale)
                    << power << ' ' << constant << ' ' << square;
            }
}

TEST(TopSpeed, IsTheLargestRootDownhill) {
    for (double power : {0.0, 10.0, 300.0, 5e3}) {
        const Resistance resistance{-60, 0.3};
        const double speed = top_speed_for_power(power, resistance);
        EXPECT_GE(speed, std::sqrt(60 / 0.3) * (1 - 1e-15));
        EXPECT_GT(demand(resistance, speed * 1.001), power);
    }
}

TEST(TopSpeed, KnowsItsLimits) {
    EXPECT_DOUBLE_EQ(top_speed_for_power(17e3, {0, 0.27}), std::cbrt(17e3 / 0.27));
    EXPECT_DOUBLE_EQ(top_speed_for_power(17e3, {50, 0}), 340);
    EXPECT_EQ(top_speed_for_power(0, {50, 0.27}), 0);
    EXPECT_EQ(top_speed_for_power(-5e3, {50, 0.27}), 0);
    EXPECT_EQ(top_speed_for_power(0, {0, 0}), 0);
    EXPECT_TRUE(std::isinf(top_speed_for_power(1, {0, 0})));
    EXPECT_TRUE(std::isinf(top_speed_for_power(0, {-1, 0})));
}

TEST(TopSpeed, HasNoJumpWhereTheFormsMeet) {
    const double level = top_speed_for_power(17e3, {0, 0.27});
    for (double constant : {1e-300, 1e-90, 1e-70, 1e-60, 1e-12, -1e-300, -1e-70, -1e-60, -1e-12})
        EXPECT_NEAR(top_speed_for_power(17e3, {constant, 0.27}), level, 1e-11) << constant;
    // Downhill the cosine passes into the hyperbolic cosine where the argument is 1.
    const double p = 200, q = 2 * std::pow(p / 3, 1.5);
    EXPECT_NEAR(top_speed_for_power(0.3 * q * (1 - 1e-12), {-0.3 * p, 0.3}),
                top_speed_for_power(0.3 * q * (1 + 1e-12), {-0.3 * p, 0.3}), 1e-9);
}

TEST(TopSpeed, NeverRisesWithDragOrMass) {
    double before = 1e9;
    for (double square = 0.01; square < 3; square *= 1.1) {
        const double speed = top_speed_for_power(17e3, {44, square});
        EXPECT_LT(speed, before);
        before = speed;
    }
    before = 1e9;
    for (double constant = -50; constant < 500; constant += 5) {
        const double speed = top_speed_for_power(17e3, {constant, 0.27});
        EXPECT_LT(speed, before);
        before = speed;
    }
}

TEST(TopSpeedInWind, UsesUpThePowerToo) {
    for (double power : {200.0, 17e3})
        for (double constant : {-50.0, 0.0, 44.0})
            for (double wind : {-60.0, -3.0, 1e-9, 3.0, 60.0}) {
                const Resistance resistance{constant, 0.27};
                const double speed = top_speed_in_wind(power, resistance, wind);
                EXPECT_NEAR(demand(resistance, speed, wind), power, 1e-8 * power)
                    << power << ' ' << constant << ' ' << wind;
            }
}

TEST(TopSpeedInWind, FallsWithTheWindFromAhead) {
    double before = 1e9;
    for (double wind = -30; wind < 30; wind += 0.5) {
        const double speed = top_speed_in_wind(17e3, {44, 0.27}, wind);
        EXPECT_LT(speed, before);
        before = speed;
    }
    EXPECT_EQ(top_speed_in_wind(17e3, {44, 0.27}, 0), top_speed_for_power(17e3, {44, 0.27}));
}

TEST(TopSpeedInWind, DriftsWithoutPower) {
    EXPECT_EQ(top_speed_in_wind(0, {44, 0.27}, 5), 0);
    EXPECT_EQ(top_speed_in_wind(0, {27, 0.27}, -5), 0);
    EXPECT_DOUBLE_EQ(top_speed_in_wind(0, {27, 0.27}, -25), 15);
    EXPECT_DOUBLE_EQ(top_speed_in_wind(0, {-27, 0.27}, 4), 6);
    EXPECT_DOUBLE_EQ(top_speed_in_wind(0, {0, 0.27}, -7), 7);
}
