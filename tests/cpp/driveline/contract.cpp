// What every part of the driveline keeps to, whichever it is: these tests take each alternative of
// Part in turn, with numbers drawn from its own rows, so that a new part is tested by being one.
#include "windwall/driveline/losses.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "every_part.hpp"
#include "samples.hpp"
#include "sound_rows.hpp"

using namespace windwall;
using driveline::Shaft;
using samples::Dice;

namespace {

template <class T>
class EveryPart : public testing::Test {};
TYPED_TEST_SUITE(EveryPart, TypesOf<driveline::Part>::type, ByKind);

constexpr int draws = 2000;

}  // namespace

TYPED_TEST(EveryPart, HasSoundRows) { contract::expect_sound(fields::group_type<TypeParam>); }

// What a part loses warms it until the air takes as much.
TYPED_TEST(EveryPart, WarmsUpByWhatItLoses) {
    if constexpr (driveline::Thermal<TypeParam>) {
        Dice dice(11);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const double loss = dice.between(0, 3000), air = dice.between(250, 350);
            const auto [node] = part.thermal_nodes(loss, air);
            EXPECT_GT(node.heat_capacity, 0);
            EXPECT_DOUBLE_EQ(node.heat_flow(air), loss);
            EXPECT_NEAR(node.heat_flow(air + loss / part.to_air), 0, 1e-9 * (1 + loss));
            // Where nothing turns nothing is lost, and the air takes a tenth for a kelvin.
            EXPECT_NEAR(node.still_flow(air + 50), -5 * part.to_air, 1e-9 * part.to_air);
        }
    }
}

// A belt may slip: its output then lags where it drives and runs ahead in overrun, by the share of
// the torque that it holds.
TYPED_TEST(EveryPart, TurnsByItsRatioInEveryGear) {
    Dice dice(1);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const Shaft in = samples::shaft(dice);
        for (std::size_t gear = 0; gear < part.gears() + 2; ++gear) {
            const driveline::GearState gear_state{gear, dice.between(-0.1, 1.1)};
            EXPECT_GT(part.ratio(gear_state), 0);
            const Shaft out = part.drive(in, gear_state);
            const double turned = out.speed * part.ratio(gear_state) / in.speed;
            double slip = 0;
            if constexpr (driveline::Slipping<TypeParam>) {
                const double held =
                    driveline::held_torque(in.torque, part.holds(in.speed, gear_state));
                slip = part.slip_share({in.speed, held}, gear_state);
                EXPECT_GE(slip, 0);
                EXPECT_LE(slip, 0.6);  // what the steepest slip of a variator bends to
            }
            EXPECT_NEAR(out.torque < 0 ? 1 / turned : turned, 1 - slip, 1e-15);
        }
    }
}

// Whichever way the power flows: what goes in and what a crank gives by slowing down come out again
// or are heat.
TYPED_TEST(EveryPart, NeverMakesPower) {
    Dice dice(2);
    for (int i = 0; i < draws; ++i) {
        const driveline::Train train{{"part", samples::part<TypeParam>(dice)}};
        Shaft in = samples::shaft(dice);
        if (i % 2) in.speed *= -1;
        const driveline::GearState gear_state{0, dice.between(0, 1)};
        std::array<double, 1> loss{};
        const Shaft out = drive(train, in, gear_state, loss);
        const double slowing = slowing_power(train, in, gear_state);
        const double size = std::abs(in.power()) + std::abs(out.power());
        EXPECT_GE(loss[0], -1e-12 * size) << in.speed << ' ' << in.torque;
        EXPECT_GE(slowing, 0);
        EXPECT_NEAR(in.power() + slowing, out.power() + loss[0], 1e-12 * size);
    }
}

// Only a crank that asks for more than a slipping part holds slows down: what it is given is then
// no more than that torque at its speed.
TYPED_TEST(EveryPart, LetsTheCrankSlowOnlyWhereItSlipsInOverrun) {
    Dice dice(5);
    int slowed = 0;
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const Shaft in = samples::shaft(dice);
        const driveline::GearState gear_state{0, dice.between(0, 1)};
        double most = std::numeric_limits<double>::infinity();
        if constexpr (driveline::Holding<TypeParam>)
            most = part.holds(in.speed, gear_state).value_or(most);
        const double missing = std::max(0.0, -in.torque - most) * in.speed;
        const double slowing = slowing_power({{"part", part}}, in, gear_state);
        EXPECT_NEAR(slowing, missing, 1e-12 * std::abs(in.power()));
        slowed += slowing > 0;
    }
    EXPECT_EQ(slowed > 0, driveline::Holding<TypeParam>);
}

TYPED_TEST(EveryPart, PassesMoreTheMoreItIsGiven) {
    Dice dice(3);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const Shaft in = samples::shaft(dice);
        const Shaft more{in.speed, in.torque + dice.between(0, 20)};
        EXPECT_LE(part.drive(in, 0).torque, part.drive(more, 0).torque);
    }
}

TYPED_TEST(EveryPart, GivesNumbersAtStandstillToo) {
    Dice dice(4);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const double torque = dice.between(-60, 300);
        const double at_rest = part.drive({0, torque}, 0).torque;
        EXPECT_TRUE(std::isfinite(at_rest));
        EXPECT_NEAR(part.drive({1e-9, torque}, 0).torque, at_rest, 1e-5 * (1 + std::abs(at_rest)));
        EXPECT_EQ(part.drive({0, 0}, 0).torque, 0);
    }
}
