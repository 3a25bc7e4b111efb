#include "windwall/solve/sweep.hpp"

#include "windwall/solve/top_speed.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

using sample::belt_driven;

TEST(Sweep, OneStretchWithFixedRatios) {
    const Sweep sweep(sample::cyclecar(), 2);
    ASSERT_EQ(sweep.stretches(), 1u);
    EXPECT_FALSE(sweep.shifts(0));
    EXPECT_EQ(sweep.at(0).engine_speed, 2500 * rpm);
    EXPECT_EQ(sweep.at(1).engine_speed, 6200 * rpm);
    EXPECT_EQ(sweep.at(0.5).stance.gear, 2u);
}

TEST(Sweep, RisesShiftsAndRisesAgainWithABelt) {
    const Sweep sweep(belt_driven(), 0);
    ASSERT_EQ(sweep.stretches(), 3u);
    EXPECT_NEAR(sweep.at(0).engine_speed, 2000 * rpm, 1e-9);
    EXPECT_EQ(sweep.at(0.5).stance.position, 0);
    for (double along : {1.0, 1.5, 2.0})
        EXPECT_NEAR(sweep.at(along).engine_speed, 4200 * rpm, 1e-9);
    EXPECT_TRUE(sweep.shifts(1));
    EXPECT_NEAR(sweep.at(1.25).stance.position, 0.25, 1e-12);
    EXPECT_EQ(sweep.at(3).engine_speed, 6200 * rpm);
    EXPECT_EQ(sweep.at(3).stance.position, 1);
}

// A chain before the belt: the sheave turns slower than the crank.
TEST(Sweep, HeldSpeedIsTheCranks) {
    Vehicle car = belt_driven();
    driveline::FinalDrive first;
    first.fixed_ratio = 1.25;
    car.driveline.insert(car.driveline.begin(), {"primary", first});
    const Sweep sweep(car, 0);
    EXPECT_NEAR(sweep.at(0).engine_speed, 2500 * rpm, 1e-9);
    EXPECT_NEAR(sweep.at(1.5).engine_speed, 5250 * rpm, 1e-9);
}

// While it shifts the engine keeps its speed, so torque and power are those of one point and the
// thrust falls as the road speed rises; the crank's inertia is not felt.
TEST(BeltDrive, HeldPartIsOnePowerAtManySpeeds) {
    Vehicle car = belt_driven();
    car.under_hood.rise = 0;
    car.engine.as<engine::Cylinder>()->head_temperature = 453.15;
    Puller puller(car);
    const Pull low = puller.at(puller.sweep(0).at(1));
    const Pull high = puller.at(puller.sweep(0).at(2));
    EXPECT_NEAR(high.point.torque / low.point.torque, 1, 1e-9);  // no cooler, no road effect
    EXPECT_NEAR(high.road_speed / low.road_speed, 2.8 / 0.8, 0.1);
    EXPECT_LT(high.thrust, low.thrust);
    EXPECT_LT(puller.accelerated_mass(0, 1), puller.accelerated_mass(0, 2));
    const double ratio = 2.8 * 5 / 0.28;
    const double felt = car.engine.as<engine::Cylinder>()->inertia * ratio * ratio;
    EXPECT_GT(puller.accelerated_mass(0, 0), puller.accelerated_mass(0, 1) + felt);
}

// Geared short it ends at the rev limit, long while it still shifts, and between the two fully
// shifted, on true points each time and in few of them.
TEST(BeltDrive, EndsOnEachStretch) {
    for (const Vehicle& base : {sample::cyclecar(), sample::cooled_cyclecar()}) {
        for (double reduction : {9.0, 4.2, 2.8}) {
            Vehicle car = belt_driven(base, reduction);
            car.goal.run_up = 800;
            const TopSpeed found = top_speed(car);
            ASSERT_TRUE(found.verdict.answered());
            const Pull& end = *found.summit.pull;
            const double speed = end.point.condition.engine_speed / rpm;
            if (reduction == 9.0) {
                EXPECT_EQ(found.summit.stop, Stop::rev_limit);
            }
            if (reduction == 2.8) {
                EXPECT_NEAR(speed, 4200, 1e-6);
                EXPECT_GT(end.position, 0.1);
                EXPECT_LT(end.position, 1);
            }
            if (found.summit.stop == Stop::balance) {
                EXPECT_NEAR(end.surplus(), 0, 1e-3);
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
    EXPECT_NEAR(a.summit.road_speed / b.summit.road_speed, 1, 2e-3);
}

}  // namespace
}  // namespace windwall::solve
