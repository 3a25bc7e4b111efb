#include "windwall/driveline/launch.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "samples.hpp"

using namespace windwall::driveline;
using samples::cvt;

namespace {

CentrifugalClutch shoes() {
    CentrifugalClutch clutch;
    clutch.engagement_speed = 250;
    clutch.shoe_mass = 0.12;
    clutch.drum_radius = 0.055;
    clutch.shoe_radius = 0.045;
    return clutch;
}

Gearbox box(std::vector<double> ratios, double inertia = 0.003) {
    Gearbox made;
    made.ratios = std::move(ratios);
    made.inertia = inertia;
    return made;
}

Start start(double grip_torque) { return {{400, 30}, grip_torque, 300 * 0.27 * 0.27, 10}; }

}  // namespace

TEST(LaunchSpeed, IsWhereTheShoesJustHold) {
    const CentrifugalClutch clutch = shoes();
    const Train train{{"clutch", clutch}, {"box", box({3, 1})}};
    const double speed = launch_speed(train, 20).value();
    EXPECT_NEAR(clutch.capacity(speed), 20, 1e-12);
    EXPECT_TRUE(slips(clutch, {speed * 0.999, 20}, {}));
    EXPECT_FALSE(slips(clutch, {speed * 1.001, 20}, {}));
    EXPECT_NEAR(launch_speed(train, 0).value(), 250, 1e-12);
    EXPECT_GT(launch_speed(train, 30).value(), speed);
}

TEST(LaunchSpeed, IsOfTheCrankWhereverTheClutchSits) {
    FinalDrive primary;
    primary.fixed_ratio = 2;
    const Train train{{"primary", primary}, {"clutch", shoes()}};
    EXPECT_NEAR(launch_speed(train, 10).value(), 2 * shoes().holding_speed(20), 1e-9);
    EXPECT_FALSE(launch_speed({{"primary", primary}}, 10));
    Clutch plate;
    plate.launch_speed = 300;
    EXPECT_EQ(launch_speed({{"clutch", plate}}, 10).value(), 300);
}

TEST(LaunchSpeed, IsWhereASlippingBeltEngages) {
    BeltCvt belt = cvt();
    EXPECT_FALSE(launch_speed({{"cvt", belt}}, 10));
    belt.engagement_speed = 220;
    EXPECT_EQ(launch_speed({{"cvt", belt}}, 10).value(), 220);
    // Behind it the clutch of a scooter turns with the driven sheave, in its lowest gearing.
    belt.engagement_speed.reset();
    EXPECT_NEAR(launch_speed({{"cvt", belt}, {"clutch", shoes()}}, 5).value(),
                2.7 * shoes().holding_speed(5 * 2.7), 1e-9);
}

TEST(LaunchGear, IsFirstWhereTheTyresHold) {
    EXPECT_EQ(launch_gear({{"clutch", Clutch{}}, {"box", box({9, 5, 3})}}, start(1e6)), 0u);
}

TEST(LaunchGear, IsFirstToo_WhereEveryGearSpinsTheTyres) {
    // All as good as the grip: the shortest heats the clutch least.
    EXPECT_EQ(launch_gear({{"clutch", Clutch{}}, {"box", box({9, 8.9, 8.8}, 0)}}, start(60)), 0u);
}

TEST(LaunchGear, IsAHigherOneWhereGripIsSpentAndFirstHasMoreToSpinUp) {
    // 0.02 kg m2 counts 81 times in first and 25 times in second; both spin the tyres.
    const Train train{{"clutch", Clutch{}}, {"box", box({9, 5, 1}, 0.02)}};
    EXPECT_EQ(launch_gear(train, start(60)), 1u);
    EXPECT_EQ(launch_gear(train, start(1e6)), 0u);
}

// In whatever order they stand: a shorter one is taken where it is as good, and only there.
TEST(LaunchGear, PrefersTheShorterOfEquals) {
    EXPECT_EQ(launch_gear({{"clutch", Clutch{}}, {"box", box({8.9, 9}, 0)}}, start(60)), 1u);
    EXPECT_EQ(launch_gear({{"clutch", Clutch{}}, {"box", box({5, 9}, 0.02)}}, start(60)), 0u);
}

// Two gears by hand: 60 N m of the road leave first 270 - 60 over 21.87 + 81 x 0.6 kg m2, second
// 150 - 60 over 21.87 + 25 x 0.6. A road that took nothing would ask for second.
TEST(LaunchGear, CountsWhatTheRoadTakesAtTheStart) {
    Gearbox gears = box({9, 5}, 0.6);
    gears.efficiency = 1;
    gears.drag_torque = gears.churning_torque = 0;
    const Train train{{"clutch", Clutch{}}, {"box", gears}};
    Start uphill = start(1e6);
    uphill.resistance = 60;
    const double first = 210 / (300 * 0.27 * 0.27 + 48.6), second = 90 / (300 * 0.27 * 0.27 + 15);
    EXPECT_NEAR(launch_acceleration(train, uphill, {0, 0}), first, 1e-9);
    EXPECT_NEAR(launch_acceleration(train, uphill, {1, 0}), second, 1e-9);
    EXPECT_EQ(launch_gear(train, uphill), 0u);
    uphill.resistance = 0;
    EXPECT_EQ(launch_gear(train, uphill), 1u);
}

TEST(LaunchGear, StartsAVariatorAtItsLowestGearing) {
    const Train train{{"clutch", Clutch{}}, {"cvt", cvt()}, {"box", box({2, 1})}};
    EXPECT_EQ(launch_gear(train, start(1e6)), 0u);
    EXPECT_GT(launch_acceleration(train, start(1e6), {0, 0}),
              launch_acceleration(train, start(1e6), {0, 0.5}));
}

TEST(LaunchGear, ChangesNothingWithAClutchThatHoldsLess) {
    Clutch weak;
    weak.capacity = 5;
    const Train train{{"clutch", weak}, {"box", box({9, 5})}};
    const Train strong{{"clutch", Clutch{}}, {"box", box({9, 5})}};
    EXPECT_LT(launch_acceleration(train, start(1e6), {0, 0}),
              launch_acceleration(strong, start(1e6), {0, 0}) / 4);
}
