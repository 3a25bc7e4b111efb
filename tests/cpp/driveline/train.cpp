#include "windwall/driveline/gearing.hpp"

#include <gtest/gtest.h>

#include <array>
#include <numeric>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::driveline;

namespace {

/// Clutch, four-speed box, chain 15:38 and an axle of 1.9.
Train cyclecar() {
    Gearbox box;
    box.ratios = {3.2, 2.0, 1.45, 0.8};
    Chain chain;
    chain.teeth_front = 15;
    chain.teeth_rear = 38;
    FinalDrive axle;
    axle.fixed_ratio = 1.9;
    Train train;
    train.push_back({"clutch", Clutch{}});
    train.push_back({"gearbox", box});
    train.push_back({"chain", chain});
    train.push_back({"axle", axle});
    return train;
}

Gearbox range_box() {
    Gearbox box;
    box.ratios = {1.5, 1.0};
    box.shift_time = 0.9;
    return box;
}

}  // namespace

TEST(Train, MultipliesItsRatios) {
    const Train train = cyclecar();
    EXPECT_EQ(gears(train), 4u);
    EXPECT_DOUBLE_EQ(total_ratio(train, 3), 0.8 * 38 / 15 * 1.9);
    EXPECT_DOUBLE_EQ(total_ratio(train, 0), 3.2 * 38 / 15 * 1.9);
    EXPECT_EQ(total_ratio({}, 0), 1);
    EXPECT_EQ(gears({}), 1u);
}

TEST(Train, StaysInTopBeyondIt) {
    EXPECT_EQ(total_ratio(cyclecar(), 99), total_ratio(cyclecar(), 3));
}

TEST(Train, PairsTheGearsOfTwoBoxes) {
    Train train = cyclecar();
    train.push_back({"range", range_box()});
    ASSERT_EQ(gears(train), 8u);
    EXPECT_DOUBLE_EQ(total_ratio(train, 1), 2.0 * 38 / 15 * 1.9 * 1.5);
    EXPECT_DOUBLE_EQ(total_ratio(train, 4), 3.2 * 38 / 15 * 1.9);
    EXPECT_DOUBLE_EQ(total_ratio(train, 7), 0.8 * 38 / 15 * 1.9);
    EXPECT_DOUBLE_EQ(total_ratio(train, 99), 0.8 * 38 / 15 * 1.9);
    EXPECT_EQ(shift_time(train), 0.9);
    EXPECT_EQ(shift_time(cyclecar()), 0.4);
}

TEST(Train, AccountsForEveryWatt) {
    const Train train = cyclecar();
    samples::Dice dice(5);
    for (int i = 0; i < 1000; ++i) {
        const Shaft crank = samples::shaft(dice);
        std::array<double, 4> losses{};
        const Shaft wheels = drive(train, crank, static_cast<std::size_t>(i % 4), losses);
        const double lost = std::accumulate(losses.begin(), losses.end(), 0.0);
        EXPECT_NEAR(crank.power(), wheels.power() + lost, 1e-9 * (1 + std::abs(crank.power())));
        for (double each : losses)
            EXPECT_GE(each, -1e-9);
    }
}

// Behind a box of 2:1 that loses nothing the engine asks for 80 N m at 150 rad/s; the belt holds
// 30, so the engine slows by 50 N m at 150 rad/s, and the wheels feel no more than the belt's 30.
TEST(Train, LetsTheCrankSlowWhereABeltSlipsInOverrun) {
    FinalDrive primary;
    primary.fixed_ratio = 2;
    primary.efficiency = 1;
    primary.drag_torque = 0;
    BeltCvt belt = samples::cvt();
    belt.slip_torque = 30;
    belt.drag_share = belt.load_loss = belt.ratio_loss = belt.slip = 0;
    const Train train{{"primary", primary}, {"belt", belt}};
    std::array<double, 2> losses{};
    const Shaft wheels = drive(train, {300, -40}, 1, losses);
    EXPECT_DOUBLE_EQ(wheels.torque, -30 * 0.8);
    EXPECT_DOUBLE_EQ(slowing_power(train, {300, -40}, 1), 50 * 150);
    EXPECT_EQ(losses[0], 0);
    // At its capacity a tenth of the speed goes into slip: heat is torque times slip speed.
    EXPECT_NEAR(losses[1], 30 * (wheels.speed * 0.8 - 150), 1e-9);
    EXPECT_NEAR(losses[1], 30 * 150 * (1 / 0.9 - 1), 1e-9);
    EXPECT_EQ(slowing_power(train, {300, 40}, 1), 0);
}

TEST(Train, TurnsTheWheelsByTheTotalRatio) {
    const Train train = cyclecar();
    const Shaft wheels = drive(train, {700, 40}, 2);
    EXPECT_NEAR(wheels.speed * total_ratio(train, 2), 700, 1e-10);
}

TEST(Train, WritesOnlyAsManyLossesAsThereIsRoomFor) {
    std::array<double, 3> losses{-1, -1, -1};
    drive(cyclecar(), {700, 40}, 2, std::span(losses).first(2));
    EXPECT_GT(losses[1], 0);
    EXPECT_EQ(losses[2], -1);
}

TEST(Train, FeelsEveryInertiaAtTheWheels) {
    const Train train = cyclecar();
    const double axle = 1.9 * 1.9, chain = 38.0 / 15 * 38 / 15, box = 2.0 * 2.0;
    const double expected = FinalDrive{}.inertia * axle + Chain{}.inertia * chain * axle +
                            (Gearbox{}.inertia + Clutch{}.inertia) * box * chain * axle;
    EXPECT_NEAR(inertia_at_wheels(train, 1), expected, 1e-12);
}

TEST(Gearing, GoesBothWays) {
    const double speed = road_speed(700, 4.2, 0.27, 0.02);
    EXPECT_DOUBLE_EQ(speed, 700 * 0.27 * 0.98 / 4.2);
    EXPECT_DOUBLE_EQ(engine_speed(speed, 4.2, 0.27, 0.02), 700);
}
