// How a speed is held over hills: in which gear, and what is told where it is lost or gained.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "plain_drive.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using namespace plain;

constexpr double held = 20;  // m/s

/// Held at 20 m/s for a kilometre, over a hill that begins within a metre.
Outing over_hill(double grade, double from = 400, double to = 1e5) {
    vehicle::FullThrottle up;
    up.to_speed = held;
    vehicle::HoldSpeed hold;
    hold.speed = held;
    hold.for_distance = 1000;
    Outing made;
    made.legs = {up, hold};
    made.road.column = {{0, from, from + 1, to, to + 1}, {0, 0, grade, grade, 0}, {0, 0, 0, 0, 0}};
    return made;
}

vehicle::FullThrottle for_time(double seconds) {
    vehicle::FullThrottle leg;
    leg.for_time = seconds;
    return leg;
}

long count(const DriveResult& drive, Happening what) {
    return std::ranges::count(drive.events, what, &DriveEvent::what);
}

/// Which shift ends with a gear in, from 1.
std::vector<long> gears_of(const DriveResult& drive) {
    std::vector<long> gears;
    for (const DriveEvent& each : drive.events)
        if (each.what == Happening::shift_ends) gears.push_back(each.gear);
    return gears;
}

double fastest(const DriveResult& drive, std::string_view address) {
    const auto at = std::ranges::find(drive.addresses, address) - drive.addresses.begin();
    return std::ranges::max(drive.columns.at(static_cast<std::size_t>(at)));
}

}  // namespace

// The speed is reached in the second gear and held in the fourth: that change takes its time.

TEST(HeldDrive, ChangesToTheGearThatHoldsLikeAnyOther) {
    const DriveResult drive = solve::drive(sample::cyclecar(), over_hill(0));
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(gears_of(drive), (std::vector<long>{2, 4}));
    const DriveEvent& begins = event(drive, Happening::shift_begins, 1);
    const DriveEvent& ends = event(drive, Happening::shift_ends, 1);
    EXPECT_EQ(begins.gear, 2);
    EXPECT_EQ(begins.leg, 2);
    EXPECT_NEAR(ends.time - begins.time, 0.4, 1e-6);
    EXPECT_LT(ends.road_speed, held - 0.1);
    EXPECT_NEAR(last(drive, "road/speed"), held, 1e-4);
    // A leg is told to begin before what it begins with.
    EXPECT_LT(&event(drive, Happening::leg_begins, 1), &begins);
}

TEST(HeldDrive, TakesTheHighestGearThatHoldsAHill) {
    for (const auto& [grade, gear] : {std::pair{0.10, 4}, {0.12, 3}, {0.20, 2}}) {
        const DriveResult drive = solve::drive(sample::cyclecar(), over_hill(grade));
        ASSERT_EQ(drive.end, DriveEnd::legs_done);
        EXPECT_EQ(count(drive, Happening::speed_lost), gear < 4 ? 1 : 0) << grade;
        EXPECT_EQ(gears_of(drive).back(), gear) << grade;
        EXPECT_NEAR(last(drive, "road/speed"), held, 0.03) << grade;
        // In the next gear up it would not hold: at full throttle it gets slower there.
        if (gear == 4) continue;
        Outing above = over_hill(grade, 0);
        above.launch_gear = gear + 1;
        vehicle::FullThrottle pull;
        pull.to_speed = held - 0.05;
        above.legs = {pull};
        above.road_length = 4000;
        EXPECT_NE(solve::drive(sample::cyclecar(), above).end, DriveEnd::legs_done) << grade;
    }
}

TEST(HeldDrive, GoesOnInTheBestGearWhereNoneHolds) {
    const DriveResult drive = solve::drive(sample::cyclecar(), over_hill(0.45));
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(gears_of(drive).back(), 1);
    const double speed = last(drive, "road/speed");
    EXPECT_LT(speed, held - 2);
    EXPECT_GT(speed, 10);
}

TEST(HeldDrive, GoesBackToItsSpeedAndGearBehindTheHill) {
    const DriveResult drive = solve::drive(sample::cyclecar(), over_hill(0.25, 400, 700));
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(gears_of(drive), (std::vector<long>{2, 4, 2, 4}));
    EXPECT_NEAR(last(drive, "road/speed"), held, 0.03);
}

TEST(HeldDrive, StallsWhereNoGearMovesIt) {
    const vehicle::Vehicle car = sample::cyclecar();
    const DriveResult drive = solve::drive(car, over_hill(1.5));
    EXPECT_EQ(drive.end, DriveEnd::stalled);
    EXPECT_EQ(gears_of(drive).back(), 1);
    const double idles = car.engine.visit([](const auto& each) { return each.idle_speed; });
    EXPECT_NEAR(last(drive, "engine/speed"), idles, 0.05 * idles);
}

// At full throttle it takes lower gears as it slows down, and does not labour in the third.

TEST(HeldDrive, TakesLowerGearsAtFullThrottleToo) {
    vehicle::FullThrottle up;
    up.to_speed = 27;
    Outing run = over_hill(0.35, 300);
    run.legs = {up, for_time(60)};
    const DriveResult drive = solve::drive(sample::cyclecar(), run);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(gears_of(drive).front(), 2);
    EXPECT_EQ(gears_of(drive).back(), 1);
    EXPECT_GT(last(drive, "road/speed"), 10);
}

// Standing it slips at 2500 rpm. What is held below that turns slower, and below the idle not.

TEST(HeldDrive, SaysWhereTheClutchIsLetInAndWhereNoGearHolds) {
    vehicle::HoldSpeed slow;
    slow.speed = 4;
    slow.for_time = 10;
    Outing run;
    run.legs = {slow};
    const vehicle::Vehicle car = sample::cyclecar();
    const DriveResult in_gear = solve::drive(car, run);
    ASSERT_EQ(in_gear.end, DriveEnd::legs_done);
    const DriveEvent& grips = event(in_gear, Happening::clutch_grips);
    EXPECT_EQ(grips.about, "clutch");
    EXPECT_LT(grips.engine_speed, 2000 * rpm);
    EXPECT_NEAR(last(in_gear, "engine/speed"), grips.engine_speed, 0.1);
    slow.speed = 1.5;
    run.legs = {slow};
    const DriveResult slower = solve::drive(car, run);
    EXPECT_EQ(slower.end, DriveEnd::no_gear_holds);
    EXPECT_NEAR(last(slower, "road/speed"), 1.5, 1e-5);
}

// At its limit in the last gear the pedal holds it, and downhill nothing does.

TEST(HeldDrive, SaysThatTheRoadTurnsTheEngineBeyondItsLimit) {
    vehicle::Vehicle car = sample::cyclecar();
    const double limit = car.engine.as<engine::Cylinder>()->rev_limit;
    Outing run = over_hill(-0.5, 200, 2000);
    run.legs = {for_time(120)};
    const DriveResult drive = solve::drive(car, run);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(event(drive, Happening::speed_gained).gear, 4);
    const auto passed = std::ranges::find(drive.events, "engine/speed", &DriveEvent::about);
    ASSERT_NE(passed, drive.events.end());
    EXPECT_NEAR(passed->engine_speed, limit, 1e-3);
    EXPECT_GT(fastest(drive, "engine/speed"), 1.01 * limit);
    EXPECT_LE(last(drive, "engine/speed"), limit);
}

// On the level it holds that speed, which passes nothing.

TEST(HeldDrive, PassesNoLimitAtIt) {
    vehicle::Vehicle car = sample::cyclecar();
    car.engine.as<engine::Cylinder>()->rev_limit = 4500 * rpm;
    Outing run = over_hill(0);
    run.legs = {for_time(90)};
    const DriveResult drive = solve::drive(car, run);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(count(drive, Happening::rev_limit), 1);
    EXPECT_EQ(std::ranges::count(drive.events, "engine/speed", &DriveEvent::about), 0);
}

}  // namespace windwall::solve
