// What a solve calls takes no memory from the heap.
#include "windwall/road/coast_down.hpp"
#include "windwall/road/road_load.hpp"
#include "windwall/road/run_up.hpp"
#include "windwall/road/top_speed.hpp"
#include "windwall/road/tyres.hpp"

#include <gtest/gtest.h>

#include "allocations.hpp"

using namespace windwall::road;

TEST(NoAllocation, OnTheRoad) {
    Body body;
    body.mass = 300;
    body.drag_area = 0.45;
    Tyres tyres;
    tyres.size = "155/80 R13 79T TL reinforced no";
    const Resistance resistance{44, 0.27};
    double sum = 0;
    const std::size_t before = allocations();
    sum += road_load(body, 30, 1.2, 3, 0.01).total() + body.rotating_mass(0.27);
    sum += tyres.rolling_radius(30) + tyres.grip_limit(300) + tyres.slip(400, 1500);
    sum += tyres.speed_rating().value_or(0) + tyres.load_rating().value_or(0);
    sum += top_speed_in_wind(17e3, resistance, 3) + coast_down_time(330, resistance, 30, 10);
    sum += run_up_speed_constant_power(330, 17e3, resistance, 800);
    EXPECT_EQ(allocations(), before);
    EXPECT_GT(sum, 0);
    const auto* counted = new int(1);
    EXPECT_EQ(allocations(), before + 1);
    delete counted;
}
