// What every part of the charge path keeps to, whichever it is: these tests take each alternative
// of Part in turn, with numbers drawn from its own rows, so that a new part is tested by being one.
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include "every_part.hpp"
#include "samples.hpp"
#include "sound_rows.hpp"

using namespace windwall;
using samples::Dice;

namespace {

template <class T>
class EveryPart : public testing::Test {};
TYPED_TEST_SUITE(EveryPart, TypesOf<charge::Part>::type, ByKind);

constexpr int draws = 2000;

media::Stream with_flow(media::Stream in, double dry_air) {
    in.dry_air = dry_air;
    return in;
}

/// What a hole loses is of one kind with the rest, and what it lets in is weather; drops only part.
void keeps_its_drops(const media::Stream& in, const media::Stream& out) {
    EXPECT_GE(out.dry_air, std::min(in.dry_air, 0.0));
    for (std::size_t i = 0; i < in.liquid.size(); ++i) {
        EXPECT_GE(out.vapour[i], 0);
        EXPECT_LE(out.liquid[i], in.liquid[i] * (1 + 1e-12));
    }
}

/// Of every substance, vapour and liquid together, comes out what went in, or more where it is fed;
/// the gas is the gas of the vapours.
void keeps_its_substances(const media::Stream& in, const media::Stream& out, bool fed) {
    EXPECT_EQ(out.dry_air, in.dry_air);
    for (std::size_t i = 0; i < in.vapour.size(); ++i) {
        const double before = in.vapour[i] + in.liquid[i], behind = out.vapour[i] + out.liquid[i];
        EXPECT_GE(out.vapour[i], 0);
        EXPECT_GE(out.liquid[i], 0);
        EXPECT_GE(behind, before * (1 - 1e-12));
        if (!fed) {
            EXPECT_NEAR(behind, before, 1e-12);
        }
    }
    EXPECT_GE(out.film_share, 0);
    EXPECT_LE(out.film_share, 1);
    EXPECT_GE(out.drop_diameter, 0);
    const media::Gas gas = media::gas_phase(out.vapour);
    EXPECT_NEAR(out.gas.R, gas.R, 1e-9 * gas.R);
    EXPECT_NEAR(out.gas.heat_capacity(350), gas.heat_capacity(350), 1e-9 * 1000);
}

}  // namespace

TYPED_TEST(EveryPart, HasSoundRows) { contract::expect_sound(fields::group_type<TypeParam>); }

TYPED_TEST(EveryPart, GivesNumbersInAnyState) {
    Dice dice(1);
    for (int i = 0; i < draws; ++i) {
        const auto part = samples::part<TypeParam>(dice);
        const auto surroundings = samples::surroundings(dice);
        auto in = samples::stream(dice);
        if (i % 10 == 0) in.dry_air = 0;
        if (i % 10 == 1) in.dry_air *= -1;
        const double behind = i % 10 == 2 ? in.pressure : dice.decades(15e3, 400e3);
        if constexpr (charge::Passive<TypeParam>) {
            const media::Stream out = part.outlet(in, surroundings);
            EXPECT_GT(out.pressure, 0);
            EXPECT_TRUE(std::isfinite(out.pressure));
            EXPECT_GT(out.temperature, 100);
            EXPECT_LT(out.temperature, 1000);
            if constexpr (charge::Leaking<TypeParam>)
                keeps_its_drops(in, out);
            else
                keeps_its_substances(in, out, charge::Wetting<TypeParam>);
        } else if constexpr (charge::Metering<TypeParam>) {
            EXPECT_TRUE(std::isfinite(part.flow(in, behind, surroundings)));
        } else if constexpr (charge::Branching<TypeParam>) {
            EXPECT_TRUE(std::isfinite(part.branch_flow(in, behind, in.pressure, surroundings)));
        } else {
            const charge::Compression does = part.compress(in, behind, surroundings);
            keeps_its_substances(in, does.outlet, false);
            EXPECT_GT(does.outlet.temperature, 100);
            EXPECT_LT(does.outlet.temperature, 1500);
            for (double number : {does.capacity, does.leak_flow, does.crank_power,
                                  does.heat_to_charge, does.casing_loss, does.belt_loss})
                EXPECT_TRUE(std::isfinite(number));
        }
    }
}

TYPED_TEST(EveryPart, LosesMorePressureTheMoreFlows) {
    if constexpr (charge::Passive<TypeParam>) {
        Dice dice(2);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const auto surroundings = samples::surroundings(dice);
            const auto in = samples::stream(dice);
            const double more = in.dry_air * dice.between(1, 1.5);
            const double first = part.outlet(in, surroundings).pressure;
            EXPECT_LE(first, in.pressure);
            EXPECT_LE(part.outlet(with_flow(in, more), surroundings).pressure, first * (1 + 1e-14));
            EXPECT_EQ(part.outlet(with_flow(in, 0), surroundings).pressure, in.pressure);
            EXPECT_GE(part.outlet(with_flow(in, -more), surroundings).pressure, in.pressure);
        }
    }
}

TYPED_TEST(EveryPart, PassesMoreTheLowerThePressureBehind) {
    if constexpr (charge::Metering<TypeParam>) {
        Dice dice(3);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const auto surroundings = samples::surroundings(dice);
            auto in = samples::stream(dice);
            const double behind = in.pressure * dice.decades(0.2, 5);
            const double flow = part.flow(in, behind, surroundings);
            EXPECT_LE(part.flow(in, behind * dice.between(1, 1.2), surroundings),
                      flow + 1e-14 * std::abs(flow));
            EXPECT_EQ(flow >= 0, behind <= in.pressure);
            EXPECT_EQ(part.flow(in, in.pressure, surroundings), 0);
            // The two sides changed over: the same flow backwards.
            media::Stream swapped = in;
            swapped.pressure = behind;
            EXPECT_DOUBLE_EQ(part.flow(swapped, in.pressure, surroundings), -flow);
        }
    }
}

TYPED_TEST(EveryPart, PassesMoreTheFurtherItIsOpen) {
    if constexpr (charge::Metering<TypeParam>) {
        Dice dice(4);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            auto surroundings = samples::surroundings(dice);
            const auto in = samples::stream(dice);
            const double behind = in.pressure * dice.between(0.1, 1);
            const double before = part.flow(in, behind, surroundings);
            surroundings.throttle_opening += dice.between(0, 0.2);
            EXPECT_GE(part.flow(in, behind, surroundings), before * (1 - 1e-14));
        }
    }
}

TYPED_TEST(EveryPart, KeepsTheAccountOfWorkAndHeat) {
    if constexpr (charge::Driven<TypeParam>) {
        Dice dice(5);
        int free = 0;
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const auto surroundings = samples::surroundings(dice);
            auto in = samples::stream(dice);
            const double behind = in.pressure * dice.between(0.5, 2.5);
            // Near the flow it could deliver; far from it the temperature is held by its cap.
            const double could = part.compress(in, behind, surroundings).capacity;
            if (could > 0) in.dry_air = could / (1 + in.vapour_share());
            const auto does = part.compress(in, behind, surroundings);
            const double rise = media::enthalpy_flow(does.outlet) - media::enthalpy_flow(in);
            const double size = std::abs(does.shaft_power) + std::abs(does.heat_to_charge) +
                                std::abs(does.casing_loss);
            // Enthalpies carry the heat of formation of the vapours: some 1e6 J/kg of round-off.
            EXPECT_NEAR(rise, does.heat_to_charge, 1e-11 * (size + 3e6 * in.gas_flow()));
            EXPECT_NEAR(does.shaft_power, does.indicated_power + does.friction_power, 1e-12 * size);
            EXPECT_NEAR(does.shaft_power,
                        does.heat_to_charge + does.casing_loss + does.bearing_loss, 1e-12 * size);
            EXPECT_NEAR(does.crank_power, does.shaft_power + does.belt_loss, 1e-12 * size);
            EXPECT_GE(does.belt_loss, 0);
            if (does.capped) continue;
            if constexpr (requires { part.case_to_air; }) {
                // The case gives to the air around it what it takes from charge and bearings. With
                // liquid that evaporates on the way its temperature is settled to 2 % of the
                // difference.
                const auto [housing] = part.thermal_nodes(in, behind, surroundings);
                const double out =
                    housing.cold_conductance * (does.case_temperature - housing.cold_temperature);
                EXPECT_NEAR(
                    out, does.casing_loss + does.bearing_loss,
                    0.02 * housing.warm_conductance * std::abs(does.outlet.temperature - 200) +
                        1e-9 * size);
            }
            ++free;
        }
        EXPECT_GT(free, draws / 4);
    }
}

TYPED_TEST(EveryPart, AccountsForItsHeat) {
    if constexpr (charge::Passive<TypeParam> && !charge::Leaking<TypeParam>) {
        Dice dice(7);
        for (int i = 0; i < draws; ++i) {
            auto part = samples::part<TypeParam>(dice);
            if constexpr (requires { part.conductance.emplace(0); }) part.conductance = 0;
            auto surroundings = samples::surroundings(dice);
            const auto in = samples::stream(dice);
            const media::Stream out = part.outlet(in, surroundings);
            const double heat = media::heat_given_off(in, out);
            const double size = 5e6 * in.dry_air;
            if constexpr (requires { part.exchange(in, surroundings); }) {
                EXPECT_NEAR(heat, part.exchange(in, surroundings).heat, 1e-10 * size);
            } else {
                EXPECT_NEAR(heat, 0, 1e-10 * size);
            }
        }
    }
}

// At rest a wall passes on what the charge gives off on its way, and a case what charge and
// bearings give it; a warmer one takes less.
TYPED_TEST(EveryPart, WarmsUpToWhereItGivesOffWhatItTakes) {
    if constexpr (charge::Thermal<TypeParam>) {
        Dice dice(8);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const auto surroundings = samples::surroundings(dice);
            const auto in = samples::dry_stream(dice);
            const double behind = in.pressure * dice.between(0.8, 2);
            const auto [node] = part.thermal_nodes(in, behind, surroundings);
            const double both = node.warm_conductance + node.cold_conductance;
            const double rest = (node.heat + node.warm_conductance * node.warm_temperature +
                                 node.cold_conductance * node.cold_temperature) /
                                both;
            const double size = 5e6 * in.dry_air + both * rest;
            EXPECT_GT(node.heat_capacity, 0);
            EXPECT_NEAR(node.heat_flow(rest), 0, 1e-12 * size);
            EXPECT_NEAR(node.heat_flow(rest + 10), -10 * both, 1e-12 * size);
            const double passed = node.cold_conductance * (rest - node.cold_temperature);
            if constexpr (charge::Passive<TypeParam>) {
                const media::Stream out = part.outlet(in, surroundings);
                EXPECT_NEAR(passed, media::heat_given_off(in, out), 1e-9 * size);
            } else {
                const auto does = part.compress(in, behind, surroundings);
                EXPECT_NEAR(passed, does.casing_loss + does.bearing_loss,
                            does.capped ? HUGE_VAL : 1e-9 * size);
                EXPECT_NEAR(rest, does.case_temperature, 1e-9 * rest);
            }
        }
    }
}

TYPED_TEST(EveryPart, CouldDeliverMoreWhereMoreFlowCoolsTheLeak) {
    if constexpr (charge::Driven<TypeParam>) {
        Dice dice(6);
        for (int i = 0; i < draws; ++i) {
            const auto part = samples::part<TypeParam>(dice);
            const auto surroundings = samples::surroundings(dice);
            const auto in = samples::dry_stream(dice);
            const double behind = in.pressure * dice.between(1, 2.5);
            const auto less = part.compress(in, behind, surroundings);
            // A case that takes more than the rotors make cools a small flow more than a large one.
            if (less.heat_to_charge < 0) continue;
            const auto more = part.compress(with_flow(in, 1.2 * in.dry_air), behind, surroundings);
            EXPECT_LE(more.outlet.temperature, less.outlet.temperature * (1 + 1e-12));
            EXPECT_GE(more.capacity, less.capacity - 1e-12 * std::abs(less.capacity));
        }
    }
}
