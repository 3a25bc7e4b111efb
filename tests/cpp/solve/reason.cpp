#include "windwall/solve/answer/reason.hpp"

#include "windwall/fields/readable.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

/// What a builder reads of the gearing.
namespace windwall::solve {
namespace {

using vehicle::Vehicle;

Vehicle one_ratio() {
    Vehicle car = sample::cyclecar();
    car.driveline.erase(car.driveline.begin() + 1);
    return car;
}

Vehicle belt_and_box() {
    Vehicle car = sample::belt_driven();
    driveline::Gearbox box;
    box.ratios = {2, 1};
    car.driveline.insert(car.driveline.begin() + 1, {"box", box});
    return car;
}

TEST(Gearing, NamesAGearOnlyWhereThereAreSeveral) {
    EXPECT_EQ(gearing(sample::cyclecar(), 2), " in gear 3");
    EXPECT_EQ(gearing(one_ratio(), 0), "");
}

TEST(Gearing, SaysWhereTheBeltStands) {
    const Vehicle car = sample::belt_driven();
    EXPECT_EQ(gearing(car, {0, 1}), " with the belt at its highest gearing");
    EXPECT_EQ(gearing(car, {0, 0}), " with the belt at its lowest gearing");
    // 2.8 to 0.8: half way, in equal steps of ratio, is the root of their product.
    EXPECT_EQ(gearing(car, {0, 0.5}), " with the belt at 1.50 to 1");
    EXPECT_EQ(gearing(belt_and_box(), {1, 1}), " in gear 2 with the belt at its highest gearing");
}

std::string told(const Vehicle& car) {
    const TopSpeed found = top_speed(car);
    EXPECT_TRUE(found.equilibrium.pull);
    return sentence(found, car) + " " + next_to_bind(found.equilibrium, car);
}

TEST(Gearing, IsToldOfAsMuchAsThereIs) {
    EXPECT_NE(told(sample::cyclecar()).find(" in gear "), std::string::npos);
    EXPECT_EQ(told(one_ratio()).find("gear "), std::string::npos);
    EXPECT_EQ(told(sample::belt_driven()).find("gear "), std::string::npos);
    EXPECT_NE(told(sample::belt_driven()).find(" with the belt at "), std::string::npos);
}

// The belt shifts up first, and the engine rises then: from the middle of its range, held at 4200
// rpm, to 0.8 to 1 at 6200 rpm.
TEST(Gearing, TheRevLimitIsAsFarAsTheBeltStillShifts) {
    Vehicle car = sample::belt_driven();
    car.body.drag_area = 2.4;
    const EquilibriumSpeed equilibrium = top_speed(car).equilibrium;
    ASSERT_GT(equilibrium.pull->position, 0.2);
    ASSERT_LT(equilibrium.pull->position, 0.8);
    const double ratio = 2.8 * std::pow(0.8 / 2.8, equilibrium.pull->position);
    const double further = equilibrium.road_speed * (6200.0 / 4200 * ratio / 0.8 - 1);
    EXPECT_NE(next_to_bind(equilibrium, car)
                  .find(fields::readable(further, fields::speed("km/h"), {}, 4) + " further."),
              std::string::npos)
        << next_to_bind(equilibrium, car);
}

TEST(Gearing, AtTheRevLimitAndAtAStandstill) {
    Vehicle car = one_ratio();
    car.body.drag_area = 0.1;
    ASSERT_EQ(top_speed(car).equilibrium.stop, Stop::rev_limit);
    EXPECT_EQ(told(car).find("gear "), std::string::npos);
    car.body.mass = 30000;
    const TopSpeed stuck = top_speed(car);
    ASSERT_EQ(stuck.equilibrium.stop, Stop::standstill);
    EXPECT_EQ(sentence(stuck, car).rfind("Full throttle does not take the vehicle to", 0), 0u);
}

}  // namespace
}  // namespace windwall::solve
