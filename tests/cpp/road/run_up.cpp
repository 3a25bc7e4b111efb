#include "windwall/road/run_up.hpp"

#include "windwall/road/top_speed.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::road;

namespace {
constexpr Resistance light{44.129925, 0.27};
}

TEST(RunUpConstantForce, HasTheLimitWithoutDrag) {
    EXPECT_NEAR(run_up_time_constant_force(330, 374, {44, 0}, 5, 25), 20.0, 1e-12);
    EXPECT_NEAR(run_up_distance_constant_force(330, 374, {44, 0}, 5, 25), 300.0, 1e-10);
    EXPECT_NEAR(run_up_speed_constant_force(330, 374, {44, 0}, 5, 300), 25.0, 1e-12);
}

TEST(RunUpConstantForce, NeverReachesTheTerminalSpeed) {
    const double terminal = std::sqrt((400 - light.constant) / light.square);
    EXPECT_TRUE(std::isinf(run_up_time_constant_force(330, 400, light, 0, terminal * 1.0001)));
    EXPECT_TRUE(std::isinf(run_up_distance_constant_force(330, 400, light, 0, terminal * 1.0001)));
    EXPECT_TRUE(std::isinf(run_up_time_constant_force(330, 20, light, 0, 1)));
    EXPECT_NEAR(run_up_speed_constant_force(330, 400, light, 0, 1e6), terminal, 1e-9);
    EXPECT_EQ(run_up_time_constant_force(330, 400, light, 20, 20), 0);
}

TEST(RunUpConstantForce, GivesTheSpeedBackFromTheDistance) {
    for (double to : {5.1, 15.0, 30.0}) {
        const double distance = run_up_distance_constant_force(330, 400, light, 5, to);
        EXPECT_NEAR(run_up_speed_constant_force(330, 400, light, 5, distance), to, 1e-11);
    }
}

TEST(RunUpConstantForce, SlowsDownWhenTheThrustIsTooSmall) {
    // Coasting is a run with no thrust.
    const double speed = run_up_speed_constant_force(330, 0, light, 30, 852.760748481107);
    EXPECT_NEAR(speed, 10, 1e-9);
    EXPECT_EQ(run_up_speed_constant_force(330, 0, light, 30, 2000), 0);
}

TEST(RunUpConstantPower, HasTheLimitsWithoutResistance) {
    EXPECT_DOUBLE_EQ(run_up_time_constant_power(330, 17e3, {0, 0}, 30), 330 * 900 / 34e3);
    EXPECT_DOUBLE_EQ(run_up_distance_constant_power(330, 17e3, {0, 0}, 30), 330 * 27e3 / 51e3);
    EXPECT_NEAR(run_up_time_constant_power(330, 17e3, {1e-9, 1e-9}, 30), 330 * 900 / 34e3, 1e-6);
    EXPECT_NEAR(run_up_speed_constant_power(330, 17e3, {0, 0}, 100), std::cbrt(51e5 / 330), 1e-11);
}

// m dv/dt is what is left of the thrust, and m v dv/dx too: by differences of both closed forms.
TEST(RunUpConstantPower, ObeysNewton) {
    constexpr double m = 310, P = 24e3, step = 1e-4;
    const Resistance resistance{55, 0.33};
    for (const double v : {3.0, 12.0, 25.0, 36.0}) {
        const auto growth = [&](const auto& of) {
            return (of(m, P, resistance, v + step) - of(m, P, resistance, v - step)) / (2 * step);
        };
        const double left = P / v - resistance.force(v);
        EXPECT_NEAR(growth(run_up_time_constant_power) * left / m, 1, 1e-6);
        EXPECT_NEAR(growth(run_up_distance_constant_power) * left / (m * v), 1, 1e-6);
    }
}

TEST(RunUpConstantForce, ObeysNewton) {
    constexpr double m = 310, thrust = 900, step = 1e-4;
    const Resistance resistance{55, 0.33};
    for (const double v : {13.0, 25.0, 36.0}) {
        const auto growth = [&](const auto& of) {
            return (of(m, thrust, resistance, 12, v + step) -
                    of(m, thrust, resistance, 12, v - step)) /
                   (2 * step);
        };
        const double left = thrust - resistance.force(v);
        EXPECT_NEAR(growth(run_up_time_constant_force) * left / m, 1, 1e-6);
        EXPECT_NEAR(growth(run_up_distance_constant_force) * left / (m * v), 1, 1e-6);
    }
}

TEST(RunUpConstantPower, HasNoJumpWhereDragIsLeftOut) {
    // The join lies at c top^2 = 1e-8 a, with top = P / a = 340 m/s.
    const double join = 1e-8 * 50 / (340.0 * 340);
    for (double to : {5.0, 100.0, 300.0}) {
        const double with = run_up_distance_constant_power(330, 17e3, {50, join * 1.01}, to);
        const double without = run_up_distance_constant_power(330, 17e3, {50, join * 0.99}, to);
        EXPECT_NEAR(with, without, 1e-3 + 1e-6 * without) << to;
    }
}

TEST(RunUpConstantPower, NeverReachesTheTerminalSpeed) {
    const double top = top_speed_for_power(17e3, light);
    EXPECT_TRUE(std::isinf(run_up_time_constant_power(330, 17e3, light, top)));
    EXPECT_TRUE(std::isinf(run_up_distance_constant_power(330, 17e3, light, top * 1.01)));
    EXPECT_NEAR(run_up_speed_constant_power(330, 17e3, light, 1e9), top, 1e-9);
    EXPECT_EQ(run_up_speed_constant_power(330, 17e3, light, 0), 0);
    EXPECT_EQ(run_up_speed_constant_power(330, 0, light, 100), 0);
}

TEST(RunUpConstantPower, GivesTheSpeedBackFromTheDistance) {
    for (double to : {1.0, 15.0, 37.0, 38.4}) {
        const double distance = run_up_distance_constant_power(330, 17e3, light, to);
        EXPECT_NEAR(run_up_speed_constant_power(330, 17e3, light, distance), to, 1e-9);
    }
}

TEST(RunUpConstantPower, IsNeverFasterHeavierOrWiderAndNeverSlowerStronger) {
    const double base = run_up_speed_constant_power(330, 17e3, light, 800);
    EXPECT_LT(run_up_speed_constant_power(340, 17e3, light, 800), base);
    EXPECT_LT(run_up_speed_constant_power(330, 17e3, {44.129925, 0.28}, 800), base);
    EXPECT_LT(run_up_speed_constant_power(330, 17e3, {46, 0.27}, 800), base);
    EXPECT_GT(run_up_speed_constant_power(330, 18e3, light, 800), base);
    EXPECT_GT(run_up_speed_constant_power(330, 17e3, light, 900), base);
}
