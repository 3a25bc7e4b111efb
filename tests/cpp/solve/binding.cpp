#include "windwall/solve/answer/binding.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

/// Why a vehicle gets no faster, and how far away the next reason is.
namespace windwall::solve {
namespace {

using vehicle::Vehicle;

Vehicle one_ratio() {
    Vehicle car = sample::cyclecar();
    car.driveline.erase(car.driveline.begin() + 1);
    return car;
}

TEST(BeltPosition, IsOfAVariatorAlone) {
    EXPECT_FALSE(belt_position(sample::cyclecar(), {2, 1}));
    const Vehicle car = sample::belt_driven();
    EXPECT_TRUE(belt_position(car, {0, 1})->highest);
    EXPECT_TRUE(belt_position(car, {0, 0})->lowest);
    // 2.8 to 0.8: half way, in equal steps of ratio, is the root of their product.
    const BeltPosition half = *belt_position(car, {0, 0.5});
    EXPECT_NEAR(half.ratio, std::sqrt(2.8 * 0.8), 1e-12);
    EXPECT_FALSE(half.highest || half.lowest);
}

// The belt shifts up first, and the engine rises then: from the middle of its range, held at 4200
// rpm, to 0.8 to 1 at 6200 rpm.
TEST(NextBinding, TheRevLimitIsAsFarAsTheBeltStillShifts) {
    Vehicle car = sample::belt_driven();
    car.body.drag_area = 2.4;
    const EquilibriumSpeed equilibrium = top_speed(car).equilibrium;
    ASSERT_GT(equilibrium.full_throttle->position, 0.2);
    ASSERT_LT(equilibrium.full_throttle->position, 0.8);
    const double ratio = 2.8 * std::pow(0.8 / 2.8, equilibrium.full_throttle->position);
    const double further = equilibrium.road_speed * (6200.0 / 4200 * ratio / 0.8 - 1);
    const NextBinding next = *next_binding(equilibrium, car);
    EXPECT_EQ(next.binding, Binding::rev_limit);
    EXPECT_NEAR(*next.speed, further, 1e-4 * further);
}

TEST(NextBinding, AtTheRevLimitItIsDragAndAtAStandstillNothing) {
    Vehicle car = one_ratio();
    car.body.drag_area = 0.1;
    const TopSpeed fast = top_speed(car);
    ASSERT_EQ(fast.equilibrium.stop, StopReason::rev_limit);
    EXPECT_EQ(binding(fast.equilibrium), Binding::rev_limit);
    const NextBinding next = *next_binding(fast.equilibrium, car);
    EXPECT_EQ(next.binding, Binding::drag);
    EXPECT_NEAR(
        next.share,
        fast.equilibrium.full_throttle->load.total() / fast.equilibrium.full_throttle->thrust,
        1e-12);
    car.body.mass = 30000;
    const TopSpeed stuck = top_speed(car);
    EXPECT_EQ(binding(stuck.equilibrium), Binding::standstill);
    EXPECT_FALSE(next_binding(stuck.equilibrium, car));
    EXPECT_FALSE(unanswered(stuck));
}

}  // namespace
}  // namespace windwall::solve
