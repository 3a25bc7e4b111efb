// What every part of the driveline keeps to, whichever it is: these tests take each alternative of
// Part in turn, with numbers drawn from its own rows, so that a new part is tested by being one.
#include <gtest/gtest.h>

#include <cmath>
#include <concepts>
#include <regex>
#include <set>

#include "every_part.hpp"
#include "samples.hpp"

using namespace windwall;
using driveline::Shaft;
using samples::Dice;

namespace {

template <class T>
class EveryPart : public testing::Test {};
TYPED_TEST_SUITE(EveryPart, TypesOf<driveline::Part>::type, ByKind);

constexpr int draws = 2000;

}  // namespace

TYPED_TEST(EveryPart, HasRowsThatCanBeReadAndExplained) {
    std::set<std::string_view> keys;
    const std::regex word("[a-z][a-z0-9_]*");
    for (const fields::Row& row : TypeParam::rows()) {
        EXPECT_TRUE(keys.insert(row.key).second) << row.key;
        EXPECT_TRUE(std::regex_match(std::string(row.key), word)) << row.key;
        EXPECT_NO_THROW(fields::unit_of(row.measure)) << row.key;
        EXPECT_TRUE(!samples::is_number(row) || row.range.low < row.range.high) << row.key;
        EXPECT_FALSE(row.sentence.empty()) << row.key;
        EXPECT_EQ(row.need == fields::Need::usual, !row.source.empty()) << row.key;
    }
}

TYPED_TEST(EveryPart, HasDefaultsInsideTheirRanges) {
    TypeParam made;
    for (const fields::Row& row : TypeParam::rows()) {
        if (row.need != fields::Need::usual || row.member.shape != fields::Shape::number) continue;
        const double number = *static_cast<double*>(row.member.of(&made));
        const fields::Unit& unit = fields::unit_of(row.measure);
        EXPECT_GE(number, samples::si(row.range.low, unit)) << row.key;
        EXPECT_LE(number, samples::si(row.range.high, unit)) << row.key;
        EXPECT_GT(row.sigma, 0) << row.key;
        EXPECT_LT(row.sigma, row.range.high - row.range.low) << row.key;
    }
}

// A belt may slip: its output then lags where it drives and runs ahead in overrun.
TYPED_TEST(EveryPart, TurnsByItsRatioInEveryGear) {
    Dice dice(1);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const Shaft in = samples::shaft(dice);
        for (std::size_t gear = 0; gear < part.gears() + 2; ++gear) {
            const driveline::Stance stance{gear, dice.between(-0.1, 1.1)};
            EXPECT_GT(part.ratio(stance), 0);
            const Shaft out = part.drive(in, stance);
            const double turned = out.speed * part.ratio(stance) / in.speed;
            if constexpr (!driveline::Slipping<TypeParam>) {
                EXPECT_NEAR(turned, 1, 1e-15);
            } else {
                EXPECT_TRUE(out.torque < 0 ? turned >= 1 - 1e-15 : turned <= 1 + 1e-15) << turned;
                EXPECT_GT(turned, 0.3);
                EXPECT_LT(turned, 1 / 0.3);
            }
        }
    }
}

TYPED_TEST(EveryPart, NeverMakesPower) {
    Dice dice(2);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        Shaft in = samples::shaft(dice);
        if (i % 2) in.speed *= -1;
        // A clutch that slips in overrun lets the engine slow down: what it does not take is not
        // the clutch's to lose.
        if constexpr (std::same_as<TypeParam, driveline::CentrifugalClutch>) {
            if (in.power() < 0 && part.slips(in.torque, in.speed)) continue;
        }
        const double lost = in.power() - part.drive(in, {0, dice.between(0, 1)}).power();
        EXPECT_GE(lost, -1e-12 * std::abs(in.power())) << in.speed << ' ' << in.torque;
    }
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
