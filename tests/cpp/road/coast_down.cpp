#include "windwall/road/coast_down.hpp"

#include "windwall/road/over_quadratic.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::road;

namespace {
constexpr Resistance light{44.129925, 0.27};
}

TEST(OverQuadratic, HasNoJumpBetweenItsForms) {
    // With a = c = 1 the root turns over at b = 2.
    const double middle = over_quadratic(1, 2, 1, 1, 3);
    EXPECT_DOUBLE_EQ(middle, 0.5 - 0.25);
    for (double step : {1e-3, 1e-5, 1e-7, 1e-9, 1e-12})
        for (double sign : {-1.0, 1.0})
            EXPECT_NEAR(over_quadratic(1, 2 + sign * step, 1, 1, 3), middle, 0.2 * step);
}

TEST(OverQuadratic, AddsUp) {
    for (double b : {-1.0, 0.0, 0.5, 3.0, 30.0})
        for (double c : {0.0, 1e-9, 0.3, 2.0}) {
            const double whole = over_quadratic(50, b, c, 1, 30);
            EXPECT_NEAR(over_quadratic(50, b, c, 1, 7) + over_quadratic(50, b, c, 7, 30), whole,
                        1e-14 * whole + 1e-15);
        }
}

TEST(CoastDown, TakesNoTimeUphillInSpeed) {
    EXPECT_EQ(coast_down_time(330, light, 10, 10), 0);
    EXPECT_EQ(coast_down_time(330, light, 10, 20), 0);
    EXPECT_EQ(coast_down_distance(330, light, 10, 20), 0);
}

TEST(CoastDown, NeverStopsWithoutFriction) {
    EXPECT_TRUE(std::isinf(coast_down_time(330, {0, 0.27}, 30, 0)));
    EXPECT_TRUE(std::isinf(coast_down_distance(330, {0, 0.27}, 30, 0)));
    // Downhill it settles where the slope holds the drag.
    EXPECT_TRUE(std::isinf(coast_down_time(330, {-27, 0.27}, 30, 10)));
    EXPECT_TRUE(std::isfinite(coast_down_time(330, {-27, 0.27}, 30, 10.01)));
}

TEST(CoastDown, HasTheTextbookLimits) {
    EXPECT_NEAR(coast_down_time(330, {44, 0}, 30, 10), 330 * 20 / 44.0, 1e-10);
    EXPECT_NEAR(coast_down_time(330, {44, 1e-13}, 30, 10), 330 * 20 / 44.0, 1e-9);
    EXPECT_NEAR(coast_down_time(330, {0, 0.27}, 30, 10), 330 / 0.27 * (0.1 - 1 / 30.0), 1e-10);
    EXPECT_NEAR(coast_down_distance(330, {44, 0}, 30, 10), 330 * 800 / 88.0, 1e-9);
    EXPECT_NEAR(coast_down_distance(330, {0, 0.27}, 30, 10), 330 / 0.27 * std::log(3), 1e-9);
    EXPECT_NEAR(coast_down_speed(330, {44, 0}, 30, 10), 30 - 440 / 330.0, 1e-12);
    EXPECT_NEAR(coast_down_speed(330, {0, 0.27}, 30, 10), 30 / (1 + 0.27 * 30 * 10 / 330), 1e-12);
}

TEST(CoastDown, GivesTheSpeedBackFromTheTime) {
    for (double to : {0.01, 1.0, 10.0, 29.9}) {
        const double time = coast_down_time(330, light, 30, to);
        EXPECT_NEAR(coast_down_speed(330, light, 30, time), to, 1e-11);
    }
    EXPECT_EQ(coast_down_speed(330, light, 30, 0), 30);
    EXPECT_EQ(coast_down_speed(330, light, 30, 112), 0);
    EXPECT_EQ(coast_down_speed(330, light, 30, 1e9), 0);
}

TEST(CoastDown, TakesLongerTheHeavierAndTheSleeker) {
    const double base = coast_down_time(330, light, 30, 10);
    EXPECT_NEAR(coast_down_time(660, light, 30, 10), 2 * base, 1e-12);
    EXPECT_GT(coast_down_time(330, {44, 0.25}, 30, 10), base);
    EXPECT_GT(coast_down_time(330, {40, 0.27}, 30, 10), base);
    EXPECT_LT(coast_down_time(330, 44.129925, 0.5, 0.27, 30, 10), base);
}
