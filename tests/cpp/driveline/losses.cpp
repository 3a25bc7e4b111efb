#include "windwall/driveline/losses.hpp"

#include <gtest/gtest.h>

#include <cmath>

using namespace windwall::driveline;

namespace {
constexpr Losses plain{0.98, 0.5, 0};
}

TEST(Transmit, TakesDragFirstAndTheShareOfTheLoadThen) {
    const Shaft out = transmit({400, 20}, 2.5, plain);
    EXPECT_DOUBLE_EQ(out.torque, (20 - 0.5) * 2.5 * 0.98);
    EXPECT_DOUBLE_EQ(out.speed, 160);
}

TEST(Transmit, TurnsTheLossesOverInOverrun) {
    // The wheels feel more than the engine brakes with: 5 N m and the drag, over the efficiency.
    const Shaft out = transmit({400, -5}, 2.5, plain);
    EXPECT_DOUBLE_EQ(out.torque, -(5 + 0.5) / 0.98 * 2.5);
}

TEST(Transmit, HasNoJumpBetweenDriveAndOverrun) {
    const double just_driving = transmit({400, 0.5 + 1e-12}, 2.5, plain).torque;
    const double just_driven = transmit({400, 0.5 - 1e-12}, 2.5, plain).torque;
    EXPECT_NEAR(just_driving, just_driven, 1e-11);
}

TEST(Drag, IsAllThereAboveWalkingPaceAndGoneAtRest) {
    EXPECT_EQ(drag(plain, 20), 0.5);
    EXPECT_EQ(drag(plain, 900), 0.5);
    EXPECT_EQ(drag(plain, 0), 0);
    EXPECT_EQ(drag(plain, -30), -0.5);
    EXPECT_DOUBLE_EQ(drag(plain, std::nextafter(20.0, 0)), 0.5);
}

TEST(Drag, ChurningIsStatedAtFiveThousand) {
    const Losses churned{1, 0.2, 0.6};
    EXPECT_DOUBLE_EQ(drag(churned, 5000 * 2 * 3.14159265358979323846 / 60), 0.8);
    EXPECT_DOUBLE_EQ(drag(churned, churning_speed / 2), 0.5);
}
