// What is soaked in a long pull is where the equations of a drive come to rest.
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/vehicle/thermal_state.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "scenario/files.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

constexpr double hour = 3600;

vehicle::Outing full_throttle(double time, vehicle::Starts starts) {
    vehicle::FullThrottle leg;
    leg.for_time = time;
    vehicle::Outing made;
    made.id = "pull";
    made.starts = starts;
    made.legs = {leg};
    return made;
}

double last(const DriveResult& drive, std::string_view address) {
    const auto at = std::ranges::find(drive.addresses, address) - drive.addresses.begin();
    return drive.columns.at(static_cast<std::size_t>(at)).back();
}

/// Where the head is not warmed through in the steady answer, it is here.
vehicle::Vehicle warmed_through(vehicle::Vehicle car) {
    if (auto* engine = car.engine.as<engine::Cylinder>()) engine->cooling.pull_time.reset();
    return car;
}

std::vector<vehicle::Vehicle> vehicles() {
    std::vector<vehicle::Vehicle> all{sample::cooled_cyclecar(), sample::belt_driven()};
    for (const std::string file : {"airfield_cyclecar", "lakebed_streamliner", "village_microcar"})
        all.push_back(scenario::loaded(scenario::read_file(file + ".json")).vehicle);
    return all;
}

}  // namespace

// A blower's case takes a quarter of an hour to a factor e: four hours bring all to rest from an
// idle, and one what the way up to that speed has taken from a soaked vehicle.
TEST(DriveRest, ALongPullEndsAtTheSteadyAnswer) {
    for (const vehicle::Vehicle& stated : vehicles()) {
        const vehicle::Vehicle car = warmed_through(stated);
        const TopSpeed top = solve::top_speed(car);
        const double speed = top.equilibrium.road_speed;
        VehicleSolver solver(car);
        const FullThrottlePoint& at = *top.equilibrium.full_throttle;
        const FullThrottlePoint there =
            solver.at({at.point.condition.engine_speed, at.gear_state()});
        const vehicle::ThermalState rest =
            vehicle::thermal_state(solver.point_solver().balance(), there.point.work,
                                   there.point.torque, there.gear_state());
        EXPECT_GE(rest.nodes().size(), 4U);
        for (const auto& [time, starts] : {std::pair{4 * hour, vehicle::Starts::idling},
                                           std::pair{hour, vehicle::Starts::soaked}}) {
            const DriveResult drive = solve::drive(car, full_throttle(time, starts));
            ASSERT_EQ(drive.end, DriveEnd::legs_done);
            EXPECT_NEAR(last(drive, "road/speed"), speed, 1e-4 * speed);
            for (const vehicle::NodeState& node : rest.nodes())
                EXPECT_NEAR(last(drive, node.address + "/temperature") / node.temperature, 1, 1e-4)
                    << node.address << " after " << time << " s";
        }
    }
}

TEST(DriveRest, WhatSetsOutSoakedStaysAtRest) {
    for (const vehicle::Vehicle& stated : vehicles()) {
        const vehicle::Vehicle car = warmed_through(stated);
        const DriveResult drive = solve::drive(car, full_throttle(1, vehicle::Starts::soaked));
        const DriveResult cold = solve::drive(car, full_throttle(1, vehicle::Starts::cold));
        ASSERT_GT(drive.phase.size(), 2U);
        for (std::size_t i = 0; i < drive.addresses.size(); ++i) {
            if (!drive.addresses[i].ends_with("/temperature")) continue;
            if (!drive.addresses[i].starts_with("engine/")) continue;
            EXPECT_GT(drive.columns[i].front(), cold.columns[i].front() + 20) << drive.addresses[i];
        }
    }
}

}  // namespace windwall::solve
