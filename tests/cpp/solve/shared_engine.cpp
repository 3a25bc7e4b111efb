// One curve of full throttle for every body and gearing that an engine stands in.
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

TEST(SharedEngine, IsNotSharedAcrossRanges) {
    Vehicle car = sample::cyclecar(), other = car;
    other.engine.as<engine::Cylinder>()->rev_limit += 1;
    EXPECT_FALSE(same_range(car, other));
    EXPECT_FALSE(same_range(car, sample::belt_driven(car)));
}

}  // namespace
}  // namespace windwall::solve
