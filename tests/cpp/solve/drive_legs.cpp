// Where a leg or its road ends, and when the bonnet is opened.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "plain_drive.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using namespace plain;

vehicle::Stop stop_for(double seconds) {
    vehicle::Stop made;
    made.time = seconds;
    return made;
}

vehicle::FullThrottle to_speed(double speed) {
    vehicle::FullThrottle made;
    made.to_speed = speed;
    return made;
}

/// K under the bonnet, where it stands.
double bay_at_rest(const vehicle::Vehicle& car, vehicle::Hood hood, double standing) {
    vehicle::Stop stop = stop_for(standing);
    stop.hood = hood;
    const DriveResult drive = solve::drive(car, outing({for_distance(300), stop}));
    const auto& bay = drive.columns.at(
        static_cast<std::size_t>(std::ranges::find(drive.addresses, "under_hood/air/temperature") -
                                 drive.addresses.begin()));
    std::size_t last = 0;
    for (std::size_t i = 0; i < drive.phase.size(); ++i)
        if (drive.phase[i] == Phase::braking) last = i;
    return standing < 1 ? bay.at(last) : bay.back();
}

}  // namespace

// Downhill a vehicle that rolls gets no slower than it is.

TEST(Drive, EndsWhereARollingVehicleGetsNoSlower) {
    vehicle::Vehicle car = plain_car();
    car.goal.grade = -0.05;
    vehicle::Coast coast;
    coast.to_speed = 5;
    const DriveResult drive = solve::drive(car, outing({to_speed(15), coast}));
    EXPECT_EQ(drive.end, DriveEnd::no_less_speed);
    EXPECT_LT(last(drive, "time"), 30);
    // Nor to a speed that is to be held then.
    vehicle::HoldSpeed hold;
    hold.speed = 5;
    hold.for_time = 10;
    EXPECT_EQ(solve::drive(car, outing({to_speed(15), hold})).end, DriveEnd::no_less_speed);
    car.goal.grade = 0;
    EXPECT_EQ(solve::drive(car, outing({to_speed(15), coast})).end, DriveEnd::legs_done);
}

// Turned round it has the road that it came along, and that which it comes back on.

TEST(Drive, ComesBackToTheLineAndNoFurther) {
    vehicle::Stop turn = stop_for(1);
    turn.turn_round = true;
    Outing run = outing({for_distance(200), turn, for_distance(2000)});
    run.road_length = 600;
    const DriveResult drive = solve::drive(plain_car(), run);
    ASSERT_EQ(drive.end, DriveEnd::road_ends);
    const double out = event(drive, Happening::stands_still).distance;
    EXPECT_GT(out, 200);
    EXPECT_NEAR(last(drive, "distance"), 2 * out, 1e-4);
}

// Braking it is covered; behind a minute with and without that is seen.

TEST(Drive, OpensTheBonnetWhereItStands) {
    const vehicle::Vehicle car = sample::cyclecar();
    using enum vehicle::Hood;
    EXPECT_DOUBLE_EQ(bay_at_rest(car, open, 0.1), bay_at_rest(car, closed, 0.1));
    EXPECT_LT(bay_at_rest(car, open, 60), bay_at_rest(car, closed, 60) - 1);
}

}  // namespace windwall::solve
