// A belt drive of variable ratio that is let go, held and driven again.
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/part_load/held_speed.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "solve/drive_column.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

constexpr double fast = 20;  // m/s, in the middle of what the belt shifts through

vehicle::FullThrottle until(double speed) {
    vehicle::FullThrottle leg;
    leg.to_speed = speed;
    return leg;
}

DriveResult driven(std::vector<vehicle::Leg> legs) {
    vehicle::Outing made;
    made.id = "belt";
    made.legs = std::move(legs);
    return drive(sample::belt_driven(), made, {.tolerance = 1e-7, .every = 0.05});
}

std::vector<double> positions(const DriveResult& drive, Phase phase) {
    std::vector<double> found;
    for (std::size_t i = 0; i < drive.phase.size(); ++i)
        if (drive.phase[i] == phase) found.push_back(column(drive, "position")[i]);
    return found;
}

long count(const DriveResult& drive, Happening what) {
    return std::ranges::count(drive.events, what, &DriveEvent::what);
}

}  // namespace

TEST(DriveVariator, StaysWhereItIsLetGoAndGoesOnFromThere) {
    vehicle::Coast lift;
    lift.for_time = 1.5;
    const DriveResult drive = driven({vehicle::Launch{}, until(fast), lift, until(fast + 3)});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const auto rolling = positions(drive, Phase::coasting);
    ASSERT_GT(rolling.size(), 20u);
    EXPECT_GT(rolling.front(), 0.2);
    EXPECT_LT(rolling.front(), 0.9);
    EXPECT_DOUBLE_EQ(rolling.front(), rolling.back());
    EXPECT_EQ(count(drive, Happening::rev_limit), 0);
    EXPECT_EQ(count(drive, Happening::ratio_begins), 1);
}

TEST(DriveVariator, BrakesAsItWasLetGo) {
    vehicle::Stop stop;
    stop.time = 1;
    const DriveResult drive = driven({vehicle::Launch{}, until(fast), stop});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const auto driving = positions(drive, Phase::driving),
               braking = positions(drive, Phase::braking);
    EXPECT_NEAR(braking.front(), driving.back(), 1e-7);  // to which its lag is settled
    EXPECT_DOUBLE_EQ(braking.front(), braking.back());
    EXPECT_EQ(positions(drive, Phase::standing).back(), 0);
}

TEST(DriveVariator, HoldsASpeedWhereTheSteadyAnswerDoes) {
    vehicle::HoldSpeed hold;
    hold.speed = fast;
    hold.for_time = 3;
    const DriveResult drive = driven({vehicle::Launch{}, until(fast), hold});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const FullThrottlePoint steady = HeldSpeed(sample::belt_driven()).at(fast);
    ASSERT_TRUE(steady.point.outcome.answered());
    ASSERT_EQ(drive.phase.back(), Phase::holding);
    EXPECT_NEAR(column(drive, "engine/speed").back(), steady.point.condition.engine_speed,
                2e-3 * steady.point.condition.engine_speed);
    EXPECT_NEAR(column(drive, "position").back(), steady.position, 2e-3);
}

TEST(DriveVariator, ShiftsBackInACoastInGearAndSaysSoAtItsLowest) {
    vehicle::Coast lift;
    lift.in_gear = true;
    lift.to_speed = 8;
    const DriveResult drive = driven({vehicle::Launch{}, until(fast), lift});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const auto driving = positions(drive, Phase::driving);
    EXPECT_EQ(driving.back(), 0);
    for (std::size_t i = 1; i < driving.size(); ++i)
        EXPECT_LT(std::abs(driving[i] - driving[i - 1]), 0.1) << i;
    EXPECT_EQ(count(drive, Happening::ratio_rests), 1);
    EXPECT_EQ(count(drive, Happening::ratio_returns), 0);
    EXPECT_EQ(count(drive, Happening::ratio_begins), 1);
}

}  // namespace windwall::solve
