// One curve of full throttle for every body and gearing that an engine stands in.
#include "windwall/driveline/train.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

/// The same engine in another body, on other tyres and gears.
Vehicle rebodied(Vehicle car) {
    car.body.mass *= 1.4;
    car.body.drag_area *= 0.5;
    car.body.rolling_resistance *= 2;
    car.tyres.growth = 0.01;
    car.driveline = sample::four_speed(3.1);
    return car;
}

TEST(FullLoadCurve, IsOneForAllBodiesAndGears) {
    for (const Vehicle& car : sample::knocking_or_not()) {
        const Vehicle other = rebodied(car);
        VehicleSolver solver(car), other_solver(other);
        const FullLoadCurve curve(solver), other_curve(other_solver);
        for (double speed = 1000; speed <= 5000; speed += 37)
            for (double road : {0.0, 4.0, 19.0, 44.0})
                EXPECT_EQ(curve.torque(speed * rpm, road), other_curve.torque(speed * rpm, road));
    }
}

// Bit for bit, in any order, and with what a watch reads in every gear.
TEST(SharedEngine, GivesEachTheSpeedItHasAlone) {
    for (const Vehicle& car : sample::knocking_or_not()) {
        const Vehicle other = rebodied(car);
        ASSERT_TRUE(same_range(car, other));
        SharedEngine shared(car);
        for (const Vehicle* asked : {&other, &car, &other, &other, &car}) {
            const TopSpeed together = shared.top_speed(*asked), alone = top_speed(*asked);
            EXPECT_EQ(together.speed(), alone.speed());
            EXPECT_EQ(together.equilibrium.gear, alone.equilibrium.gear);
            ASSERT_EQ(together.full_throttle_points.size(), alone.full_throttle_points.size());
            for (std::size_t i = 0; i < alone.full_throttle_points.size(); ++i)
                EXPECT_EQ(together.full_throttle_points[i].thrust,
                          alone.full_throttle_points[i].thrust);
        }
        EXPECT_NEAR(shared.rough_speed(other) / top_speed(other).speed(), 1, 2e-3);
    }
}

// Where a road could not bring it above a speed, it need not be driven along one.
TEST(SharedEngine, ToldWhatWouldDoTellsNoMoreThanThat) {
    for (Vehicle car : sample::knocking_or_not()) {
        car.goal.run_up = 400;
        SharedEngine shared(car);
        const double rough = shared.rough_speed(car);
        EXPECT_EQ(shared.rough_speed(car, 0.99 * rough), rough);
        for (const double least : {1.01 * rough, 1.1 * rough, 3 * rough}) {
            const double told = shared.rough_speed(car, least);
            EXPECT_GE(told, rough);
            EXPECT_LE(told, least);
        }
        EXPECT_GT(shared.rough_speed(car, 3 * rough), rough);
    }
}

// To what moves a torque by less than 1e-8.
TEST(VehicleSolver, RoadSpeedAgreesWithTheSlipThatItMakes) {
    for (const Vehicle& car : {sample::cyclecar(), rebodied(sample::cyclecar())}) {
        const VehicleSolver solver(car);
        for (std::size_t gear = 0; gear < solver.gears(); ++gear)
            for (const double turns : {1500 * rpm, 3500 * rpm, 6000 * rpm}) {
                const double speed = solver.road_speed({turns, {gear, 1}});
                const double load = solver.load(speed).total();
                const double slip =
                    car.tyres.slip(load, car.tyres.driven_load(car.body.mass, load));
                const double ratio = driveline::total_ratio(car.driveline, {gear, 1});
                const double wheels = turns / ratio * car.tyres.rolling_radius(speed);
                EXPECT_NEAR(speed / (wheels * (1 - slip)), 1, 2e-7);
            }
    }
}

TEST(SharedEngine, IsNotSharedAcrossRanges) {
    Vehicle car = sample::cyclecar(), other = car;
    other.engine.as<engine::Cylinder>()->rev_limit += 1;
    EXPECT_FALSE(same_range(car, other));
    EXPECT_FALSE(same_range(car, sample::belt_driven(car)));
}

}  // namespace
}  // namespace windwall::solve
