// A clutch that lets go of an engine in overrun.
#include "windwall/driveline/train.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/part_load/held_speed.hpp"
#include "windwall/solve/part_load/idle.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "energy_left.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

vehicle::Vehicle with_shoes() {
    vehicle::Vehicle car = sample::cyclecar();
    std::erase_if(car.driveline,
                  [](const auto& entry) { return entry.part.template as<driveline::Clutch>(); });
    driveline::CentrifugalClutch shoes;
    shoes.engagement_speed = 200;
    shoes.shoe_mass = 0.3;
    shoes.drum_radius = 0.08;
    shoes.shoe_radius = 0.06;
    car.driveline.insert(car.driveline.begin(), {"shoes", shoes});
    return car;
}

DriveResult drive_then(const vehicle::Vehicle& car, std::vector<vehicle::Leg> legs,
                       std::vector<std::vector<double>> road = {}) {
    vehicle::Outing made;
    made.id = "let_go";
    made.legs = std::move(legs);
    made.road.column = std::move(road);
    return drive(car, made, {.tolerance = 1e-7});
}

/// Down a steep hill from the start, 300 m long, and on along the plain.
std::vector<std::vector<double>> downhill() {
    return {{0, 300, 310, 2000}, {-0.2, -0.2, 0, 0}, {0, 0, 0, 0}};
}

/// Along the plain, and from 900 m on up a hill.
std::vector<std::vector<double>> uphill() {
    return {{0, 900, 910, 4000}, {0, 0, 0.15, 0.15}, {0, 0, 0, 0}};
}

/// A clutch that passes no more than a push.
vehicle::Vehicle with_weak_clutch() {
    vehicle::Vehicle car = sample::cyclecar();
    for (auto& entry : car.driveline)
        if (auto* clutch = entry.part.as<driveline::Clutch>()) clutch->capacity = 3;
    return car;
}

/// A crank that takes more to speed up than the engine gives on a steep hill, by a slack belt.
vehicle::Vehicle with_heavy_crank_behind_a_slack_belt() {
    vehicle::Vehicle car = sample::cyclecar();
    car.engine.as<engine::Cylinder>()->inertia = 3;
    driveline::Belt slack;
    slack.diameter_front = slack.diameter_rear = 0.2;
    slack.tension = 300;
    driveline::FinalDrive axle;
    axle.fixed_ratio = 6;
    car.driveline = {{"belt", slack}, {"axle", axle}};
    return car;
}

std::vector<vehicle::Leg> away_and_hold(double speed, double distance) {
    vehicle::FullThrottle away;
    away.to_speed = speed;
    vehicle::HoldSpeed hold;
    hold.speed = speed;
    hold.for_distance = distance;
    return {away, hold};
}

const DriveEvent* first(const DriveResult& drive, Happening what, double from = 0) {
    const auto found = std::ranges::find_if(drive.events, [&](const DriveEvent& event) {
        return event.what == what && event.leg == 2 && event.time >= from;
    });
    return found == drive.events.end() ? nullptr : &*found;
}

}  // namespace

// The shoes open as the engine slows: from there on it idles, and nobody drags it along.
TEST(DriveLetGo, AnEngineIdlesOnceItsShoesOpen) {
    const vehicle::Vehicle car = with_shoes();
    vehicle::FullThrottle away;
    away.to_speed = 9;
    vehicle::Coast coast;
    coast.in_gear = true;
    coast.to_speed = 1;
    const DriveResult drive = drive_then(car, {away, coast});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const auto opens = std::ranges::find_if(drive.events, [](const DriveEvent& event) {
        return event.leg == 2 && event.what == Happening::clutch_slips;
    });
    ASSERT_NE(opens, drive.events.end());
    EXPECT_GT(opens->engine_speed, 200);
    EXPECT_EQ(drive.phase.back(), Phase::coasting);
    EXPECT_LE(std::abs(energy_left(drive)),
              2e-6 * drive.energy[static_cast<std::size_t>(Energy::crank)]);
}

// Until the shoes pass what rolling takes the vehicle stands: from that moment on it moves.
TEST(DriveLetGo, AVehiclePullsAwayOnceItsShoesPassWhatTheRoadTakes) {
    vehicle::FullThrottle away;
    away.for_distance = 5;
    const DriveResult drive = drive_then(with_shoes(), {away});
    const auto column = [&](std::string_view address) -> const std::vector<double>& {
        const auto found = std::ranges::find(drive.addresses, address);
        return drive.columns.at(static_cast<std::size_t>(found - drive.addresses.begin()));
    };
    const auto& speed = column("road/speed");
    const auto moves = std::ranges::find_if(speed, [](double v) { return v > 0; });
    ASSERT_NE(moves, speed.begin());
    ASSERT_NE(moves, speed.end());
    const auto last = static_cast<std::size_t>(moves - speed.begin()) - 1;
    EXPECT_GT(column("engine/speed")[last], 200);
    EXPECT_NEAR(column("road/thrust")[last], column("road/rolling")[last], 0.1);
}

// Held back by more than its clutch holds, the crank is let go and idles; the wheels run ahead
// until the plain has slowed them down to the speed that is held.
TEST(DriveLetGo, AHeldSpeedRunsAheadDownhillAndIsHeldAgainBehindIt) {
    const DriveResult drive = drive_then(with_weak_clutch(), away_and_hold(12, 1500), downhill());
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const DriveEvent* opens = first(drive, Happening::clutch_slips);
    ASSERT_TRUE(opens);
    const DriveEvent* closes = first(drive, Happening::clutch_grips, opens->time);
    ASSERT_TRUE(closes);
    EXPECT_GT(closes->distance, 300);
    EXPECT_NEAR(closes->road_speed, 12, 0.021);
    const auto column = std::ranges::find(drive.addresses, "road/speed") - drive.addresses.begin();
    EXPECT_GT(std::ranges::max(drive.columns[static_cast<std::size_t>(column)]), 20);
    // Held it is there, for as long as so weak a clutch passes what the plain takes.
    EXPECT_NE(std::ranges::find(drive.phase, Phase::holding), drive.phase.end());
    EXPECT_LE(std::abs(energy_left(drive)),
              2e-6 * std::abs(drive.energy[static_cast<std::size_t>(Energy::grade)]));
}

// Of what the engine gives at full throttle nothing moves the vehicle any more: the road drags its
// crank along by more than the belt holds.
TEST(DriveLetGo, AnEngineThatIsDraggedAlongAtFullThrottleHasStalled) {
    vehicle::FullThrottle away;
    away.for_distance = 800;
    const auto steep =
        std::vector<std::vector<double>>{{0, 400, 410, 2000}, {0, 0, -0.6, -0.6}, {0, 0, 0, 0}};
    const DriveResult drive = drive_then(with_heavy_crank_behind_a_slack_belt(), {away}, steep);
    EXPECT_EQ(drive.end, DriveEnd::stalled);
    const auto& distance = drive.columns[1];
    EXPECT_GT(distance.back(), 400);
    EXPECT_EQ(drive.phase.back(), Phase::driving);
}

// Between its idle and where its shoes carry its torque they slip: no pedal holds a speed there.
TEST(DriveHolding, NoSpeedIsHeldBelowWhereShoesTakeHold) {
    const vehicle::Vehicle car = with_shoes();
    const double taken = vehicle::launch_speed(car), between = 0.9 * taken;
    ASSERT_GT(between, idle_speed(car));
    const double per_turn = car.tyres.rolling_radius() / driveline::total_ratio(car.driveline, {0});
    HeldSpeed held(car);
    EXPECT_TRUE(held.at(1.1 * taken * per_turn, 0).point.outcome.answered());
    const FullThrottlePoint slower = held.at(between * per_turn, 0);
    EXPECT_FALSE(slower.point.outcome.answered());
    EXPECT_EQ(slower.point.outcome.worst, beyond_gears);
}

// A hill takes more than full throttle gives in that gear: that is told once, the vehicle slows
// down while a lower one is taken, and comes back to its speed.
TEST(DriveHolding, ASpeedThatAHillTakesIsLostOnce) {
    const DriveResult drive = drive_then(sample::cyclecar(), away_and_hold(20, 2000), uphill());
    const auto lost = std::ranges::count(drive.events, Happening::speed_lost, &DriveEvent::what);
    EXPECT_EQ(lost, 1);
    const DriveEvent* at = first(drive, Happening::speed_lost);
    ASSERT_TRUE(at);
    EXPECT_GT(at->distance, 900);
    EXPECT_LT(at->distance, 910);
    const auto column = std::ranges::find(drive.addresses, "road/speed") - drive.addresses.begin();
    const auto& speeds = drive.columns[static_cast<std::size_t>(column)];
    const auto slowest = std::ranges::min_element(drive.events, [&](const auto& a, const auto& b) {
        return (a.leg == 2 ? a.road_speed : 99) < (b.leg == 2 ? b.road_speed : 99);
    });
    EXPECT_LT(slowest->road_speed, 19.8);
    EXPECT_LT(slowest->gear, at->gear);
    EXPECT_NEAR(speeds.back(), 20, 0.05);
}

TEST(DriveHolding, ASpeedThatIsHeldIsNotLost) {
    const DriveResult drive = drive_then(sample::cyclecar(), away_and_hold(20, 500));
    EXPECT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_EQ(std::ranges::count(drive.events, Happening::speed_lost, &DriveEvent::what), 0);
}

}  // namespace windwall::solve
