// What happens in a drive is seen however close it is, and every drive ends by a name.
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

TEST(Drive, SeesEventsHoweverCloseTheyAre) {
    vehicle::Vehicle car = plain_car();
    // Launched where it would shift at once: each shift follows the one before by its own time.
    Outing run = outing({for_distance(300)});
    run.shift_speed = launch + 1e-9;
    const DriveResult quick = solve::drive(car, run);
    ASSERT_EQ(quick.end, DriveEnd::legs_done);
    EXPECT_EQ(event(quick, Happening::shift_begins).gear, 1);
    EXPECT_NEAR(event(quick, Happening::shift_begins).time,
                event(quick, Happening::clutch_grips).time, 1e-6);

    // A leg that is over as it begins: the next one begins at the same moment.
    vehicle::FullThrottle reached;
    reached.to_speed = 10;
    const DriveResult twice = solve::drive(car, outing({reached, reached, reached}));
    ASSERT_EQ(twice.end, DriveEnd::legs_done);
    EXPECT_EQ(event(twice, Happening::leg_begins, 1).time,
              event(twice, Happening::leg_begins, 2).time);
    EXPECT_NEAR(last(twice, "road/speed"), 10, 1e-5);
}

// Of two that are passed within one look of a step the first one ends the leg.
TEST(Drive, TakesTheFirstOfTwoInOneStep) {
    constexpr double apart = 2e-3;
    for (double time = 4; time < 7; time += 0.2) {
        vehicle::FullThrottle alone, both;
        alone.for_time = time;
        const DriveResult first = solve::drive(sample::cyclecar(), outing({alone}));
        both.for_time = time + apart;
        both.for_distance = last(first, "distance");
        const DriveResult drive = solve::drive(sample::cyclecar(), outing({both}));
        ASSERT_EQ(drive.end, DriveEnd::legs_done);
        EXPECT_NEAR(last(drive, "time"), time, apart / 4);
    }
}

TEST(Drive, HoldsTheRevLimitInItsLastGear) {
    vehicle::Vehicle car = sample::cyclecar();
    for (auto& entry : car.driveline)
        if (auto* box = entry.part.as<driveline::Gearbox>()) box->ratios.resize(1);
    const DriveResult drive = solve::drive(car, outing({for_distance(400)}));
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(drive.phase.back(), Phase::holding);
    EXPECT_NEAR(last(drive, "road/speed"), event(drive, Happening::rev_limit).road_speed, 1e-6);
    EXPECT_NEAR(last(drive, "acceleration"), 0, 1e-6);
}

// Of what the engine gives the crank takes 2.4 N m for itself: a clutch that holds less than the
// engine's 25 N m, and more than what is left, does not slip.
TEST(Drive, AsksAClutchForWhatTheCrankLeaves) {
    vehicle::Vehicle car = plain_car();
    for (auto& entry : car.driveline)
        if (auto* clutch = entry.part.as<driveline::Clutch>()) clutch->capacity = 24;
    Outing run = outing({for_distance(30)});
    run.launch_gear = 1;
    const DriveResult drive = solve::drive(car, run);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(std::ranges::count(drive.events, Happening::clutch_slips, &DriveEvent::what), 0);
    EXPECT_EQ(drive.phase.back(), Phase::driving);
}

// A hump so short that a step would go over it: what it takes is its height.

TEST(Drive, SeesWhatUndoesItselfWithinAStep) {
    vehicle::Vehicle car = plain_car();
    car.body.rolling_resistance = 0;
    car.body.drag_area = 1e-9;
    vehicle::Coast coast;
    coast.for_distance = 400;
    vehicle::FullThrottle up;
    up.to_speed = 20;
    Outing run = outing({up, coast});
    run.road.column = {{0, 150, 150.5, 151, 1000}, {0, 0, 0.2, 0, 0}, {0, 0, 0, 0, 0}};
    const DriveResult over = solve::drive(car, run), flat = solve::drive(car, [&] {
                                                         Outing level = run;
                                                         level.road.column[1] = {0, 0, 0, 0, 0};
                                                         return level;
                                                     }());
    ASSERT_EQ(over.end, DriveEnd::legs_done);
    const double lost =
        (std::pow(last(flat, "road/speed"), 2) - std::pow(last(over, "road/speed"), 2)) / 2;
    // Its height is the mean sine of a slope that rises evenly to 0.2, over a metre of road.
    const double height = (std::sqrt(1 + 0.2 * 0.2) - 1) / 0.2;
    EXPECT_NEAR(lost, height * media::constants::gravity, 1e-4);
}

TEST(Drive, SaysWhereALimitIsPassed) {
    const vehicle::Vehicle car = sample::cyclecar();
    DriveOptions options = tight();
    options.limits = {{"road/speed", 20.0, {}, "the fence"}};
    const DriveResult drive = solve::drive(car, outing({for_distance(400)}), options);
    const DriveEvent& passed = event(drive, Happening::limit_passed);
    EXPECT_EQ(passed.about, "road/speed");
    EXPECT_NEAR(passed.road_speed, 20, 1e-5);
}

TEST(Drive, EndsByAName) {
    vehicle::Vehicle car = plain_car();
    vehicle::FullThrottle ever;
    ever.to_speed = 200;
    EXPECT_EQ(solve::drive(car, outing({ever})).end, DriveEnd::no_more_speed);
    Outing road = outing({for_distance(500)});
    road.road_length = 200;
    const DriveResult short_road = solve::drive(car, road);
    EXPECT_EQ(short_road.end, DriveEnd::road_ends);
    EXPECT_NEAR(last(short_road, "distance"), 200, 1e-5);
    Outing dry = outing({for_distance(5000)});
    dry.fuel_on_board = 2e-5;
    EXPECT_EQ(solve::drive(car, dry).end, DriveEnd::tank_empty);
    DriveOptions stopped;
    stopped.go_on = [](double time) { return time < 3; };
    const DriveResult part = solve::drive(car, outing({for_distance(500)}), stopped);
    EXPECT_EQ(part.end, DriveEnd::cancelled);
    EXPECT_GT(part.phase.size(), 3U);
}

// A leg that ends where a mark stands has come to it, whatever is rounded on the way.

TEST(Drive, NotesAMarkAtTheEndOfTheLastLeg) {
    const vehicle::Vehicle car = plain_car();
    for (int i = 0; i < 40; ++i) {
        DriveOptions options;
        const double metres = 20 + 7.7 * i;
        vehicle::FullThrottle up;
        up.to_speed = 10 + i / 3.0;
        options.mark_distances = {metres};
        EXPECT_EQ(solve::drive(car, outing({for_distance(metres)}), options).marks.size(), 1U);
        options.mark_distances = {};
        options.mark_speeds = {*up.to_speed};
        EXPECT_EQ(solve::drive(car, outing({up}), options).marks.size(), 1U) << *up.to_speed;
    }
}

// The shift is never reached in a gear in which air and thrust balance before it.

}  // namespace windwall::solve
