// A drive along a road: slopes that end it or not, and the way back.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "plain_drive.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using namespace plain;

}  // namespace

TEST(Drive, EndsWhereALowGearGetsNoFaster) {
    vehicle::Vehicle car = plain_car();
    car.body.drag_area = 8;
    vehicle::FullThrottle up;
    up.to_speed = 60;
    const DriveResult drive = solve::drive(car, outing({up}));
    EXPECT_EQ(drive.end, DriveEnd::no_more_speed);
    EXPECT_LT(event(drive, Happening::leg_begins).gear, static_cast<long>(ratios.size()));
    const auto shifts =
        std::ranges::count(drive.events, Happening::shift_begins, &DriveEvent::what);
    EXPECT_LT(shifts, 3);
    EXPECT_LT(last(drive, "time"), 300);
}

// On a hill a speed that will not come there may come behind it.

TEST(Drive, WaitsForAFlatterRoad) {
    vehicle::FullThrottle up;
    up.to_speed = 30;
    Outing hill = outing({up});
    hill.road.column = {{0, 200, 201, 700, 701}, {0, 0, 0.17, 0.17, 0}, {0, 0, 0, 0, 0}};
    EXPECT_EQ(solve::drive(plain_car(), hill).end, DriveEnd::legs_done);
}

// Turned round it comes back along the road that it went: as a road drawn from its other end.

TEST(Drive, ComesBackAlongTheRoad) {
    vehicle::Vehicle car = plain_car();
    vehicle::Stop turn;
    turn.time = 5;
    turn.turn_round = true;
    Outing both = outing({for_distance(300), turn, for_distance(300)});
    both.road.column = {{0, 100, 180, 600}, {0.01, 0.03, -0.02, 0.02}, {1, -3, 4, 2}};
    DriveOptions options = tight();
    options.mark_distances = {50, 150, 299};
    const DriveResult there = solve::drive(car, both, options);
    const double end = event(there, Happening::leg_begins, 2).distance;
    Outing mirrored = outing({for_distance(300)});
    mirrored.road.column.resize(3);
    for (std::size_t i = both.road.column[0].size(); i-- > 0;) {
        mirrored.road.column[0].push_back(std::max(0.0, end - both.road.column[0][i]));
        mirrored.road.column[1].push_back(-both.road.column[1][i]);
        mirrored.road.column[2].push_back(-both.road.column[2][i]);
    }
    const double at = (end - 180) / (600 - 180);  // where it stands, of the last piece
    mirrored.road.column[1].front() = -std::lerp(-0.02, 0.02, at);
    mirrored.road.column[2].front() = -std::lerp(4.0, 2.0, at);
    const DriveResult back = solve::drive(car, mirrored, options);
    ASSERT_EQ(there.marks.size(), 6U);
    ASSERT_EQ(back.marks.size(), 3U);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(there.marks[3 + i].time, back.marks[i].time, 1e-6);
    EXPECT_GT(std::abs(there.marks[5].time - there.marks[2].time), 0.1);
    turn.turn_round = false;
    both.legs[1] = turn;
    const DriveResult again = solve::drive(car, both, options);
    EXPECT_NEAR(again.marks.at(5).time, again.marks.at(2).time, 1e-6);
}

// The same without a road table: what the day's wind and the goal's grade gave, they take.

TEST(Drive, TurnsTheWindAndTheGrade) {
    vehicle::Vehicle car = plain_car();
    car.day.headwind = 3;
    car.goal.grade = 0.01;
    vehicle::Stop turn;
    turn.time = 5;
    turn.turn_round = true;
    DriveOptions options = tight();
    options.mark_distances = {299};
    const DriveResult there =
        solve::drive(car, outing({for_distance(300), turn, for_distance(300)}), options);
    car.day.headwind = -3;
    car.goal.grade = -0.01;
    const DriveResult back = solve::drive(car, outing({for_distance(300)}), options);
    EXPECT_NEAR(there.marks.at(1).time, back.marks.at(0).time, 1e-6);
    EXPECT_LT(there.marks.at(1).time, there.marks.at(0).time - 0.1);
}

// A hot idle before the launch costs time by the charge, by the head and by the spark that both
// force; oil that stays as it is keeps friction out of it.

}  // namespace windwall::solve
