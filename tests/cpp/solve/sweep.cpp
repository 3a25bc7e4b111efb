#include "windwall/solve/full_throttle/gear_range.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

using sample::belt_driven;

TEST(GearRange, OneStretchWithFixedRatios) {
    const GearRange gear_range(sample::cyclecar(), 2);
    ASSERT_EQ(gear_range.segments(), 1u);
    EXPECT_FALSE(gear_range.shifts(0));
    EXPECT_EQ(gear_range.at(0).engine_speed, 2500 * rpm);
    EXPECT_EQ(gear_range.at(1).engine_speed, 6200 * rpm);
    EXPECT_EQ(gear_range.at(0.5).gear_state.gear, 2u);
}

TEST(GearRange, RisesShiftsAndRisesAgainWithABelt) {
    const GearRange gear_range(belt_driven(), 0);
    ASSERT_EQ(gear_range.segments(), 3u);
    EXPECT_NEAR(gear_range.at(0).engine_speed, 2000 * rpm, 1e-9);
    EXPECT_EQ(gear_range.at(0.5).gear_state.position, 0);
    for (double along : {1.0, 1.5, 2.0})
        EXPECT_NEAR(gear_range.at(along).engine_speed, 4200 * rpm, 1e-9);
    EXPECT_TRUE(gear_range.shifts(1));
    EXPECT_NEAR(gear_range.at(1.25).gear_state.position, 0.25, 1e-12);
    EXPECT_EQ(gear_range.at(3).engine_speed, 6200 * rpm);
    EXPECT_EQ(gear_range.at(3).gear_state.position, 1);
}

// A chain before the belt: the sheave turns slower than the crank.
TEST(GearRange, HeldSpeedIsTheCranks) {
    Vehicle car = belt_driven();
    driveline::FinalDrive first;
    first.fixed_ratio = 1.25;
    car.driveline.insert(car.driveline.begin(), {"primary", first});
    const GearRange gear_range(car, 0);
    EXPECT_NEAR(gear_range.at(0).engine_speed, 2500 * rpm, 1e-9);
    EXPECT_NEAR(gear_range.at(1.5).engine_speed, 5250 * rpm, 1e-9);
}

// While it shifts the engine keeps its speed, so torque and power are those of one point and the
// thrust falls as the road speed rises; the crank's inertia is not felt.
TEST(BeltDrive, HeldPartIsOnePowerAtManySpeeds) {
    Vehicle car = belt_driven();
    car.engine_bay.rise = 0;
    car.engine.as<engine::Cylinder>()->head_temperature = 453.15;
    // Neither does the wind over blower and plenum do anything.
    for (auto& entry : car.charge_path) {
        if (auto* blower = entry.part.as<charge::PositiveBlower>()) blower->case_exchange = 0;
        if (auto* plenum = entry.part.as<charge::Plenum>()) plenum->conductance = 0;
    }
    VehicleSolver solver(car);
    const FullThrottlePoint low = solver.at(solver.gear_range(0).at(1));
    const FullThrottlePoint high = solver.at(solver.gear_range(0).at(2));
    EXPECT_NEAR(high.point.torque / low.point.torque, 1, 1e-9);  // no cooler, no road effect
    EXPECT_NEAR(high.road_speed / low.road_speed, 2.8 / 0.8, 0.1);
    EXPECT_LT(high.thrust, low.thrust);
    EXPECT_LT(solver.accelerated_mass(0, 1), solver.accelerated_mass(0, 2));
    const double ratio = 2.8 * 5 / 0.28;
    const double felt = car.engine.as<engine::Cylinder>()->inertia * ratio * ratio;
    EXPECT_GT(solver.accelerated_mass(0, 0), solver.accelerated_mass(0, 1) + felt);
}

// Geared short it ends at the rev limit, long while it still shifts, and between the two fully
// shifted, on true points each time and in few of them.
TEST(BeltDrive, EndsOnEachStretch) {
    for (const Vehicle& base : {sample::cyclecar(), sample::cooled_cyclecar()}) {
        for (double reduction : {9.0, 4.2, 2.8}) {
            Vehicle car = belt_driven(base, reduction);
            car.goal.run_up = 800;
            const TopSpeed found = top_speed(car);
            ASSERT_TRUE(found.outcome.answered());
            const FullThrottlePoint& end = *found.equilibrium.full_throttle;
            const double speed = end.point.condition.engine_speed / rpm;
            if (reduction == 9.0) {
                EXPECT_EQ(found.equilibrium.stop, StopReason::rev_limit);
            }
            if (reduction == 2.8) {
                EXPECT_NEAR(speed, 4200, 1e-6);
                EXPECT_GT(end.position, 0.1);
                EXPECT_LT(end.position, 1);
            }
            if (found.equilibrium.stop == StopReason::balance) {
                EXPECT_NEAR(end.excess_force(), 0, 1e-3);
            }
            EXPECT_LE(found.points, 12);
            EXPECT_LE(found.run_up->speed, end.road_speed);
            EXPECT_GT(found.run_up->speed, 0.7 * end.road_speed);
        }
    }
}

// With no loss and no held range left to shift through, a belt is one gear.
TEST(BeltDrive, WithoutRangeIsAGear) {
    Vehicle car = belt_driven();
    auto& part = *car.driveline[0].part.as<driveline::BeltCvt>();
    part.low_ratio = 1.2 * (1 + 1e-9);
    part.high_ratio = 1.2;
    part.drag_share = part.load_loss = part.ratio_loss = part.slip = 0;
    part.inertia = part.driven_inertia = 0;
    Vehicle geared = car;
    driveline::FinalDrive fixed;
    fixed.fixed_ratio = 6;
    fixed.inertia = car.driveline[1].part.as<driveline::FinalDrive>()->inertia;
    driveline::Clutch clutch;
    clutch.launch_speed = 2000 * rpm;
    clutch.inertia = 0;
    geared.driveline = {{"clutch", clutch}, {"axle", fixed}};
    const TopSpeed a = top_speed(car), b = top_speed(geared);
    EXPECT_NEAR(a.equilibrium.road_speed / b.equilibrium.road_speed, 1, 2e-3);
}

}  // namespace
}  // namespace windwall::solve
