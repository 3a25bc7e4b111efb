#include "windwall/charge/charge_cooler.hpp"

#include "windwall/charge/crossflow.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

ChargeCooler cooler() {
    ChargeCooler made;
    made.conductance = 60;
    made.at_charge_flow = 0.025;
    made.at_cooling_flow = 0.25;
    made.face_area = 0.03;
    return made;
}

Surroundings road(double speed) {
    Surroundings surroundings;
    surroundings.ambient_temperature = 303;
    surroundings.air_density = 1.16;
    surroundings.road_speed = speed;
    return surroundings;
}

}  // namespace

TEST(Crossflow, KeepsItsLimits) {
    EXPECT_DOUBLE_EQ(crossflow_effectiveness(2, 0), 1 - std::exp(-2));
    EXPECT_NEAR(crossflow_effectiveness(2, 1e-9), 1 - std::exp(-2), 1e-8);
    EXPECT_EQ(crossflow_effectiveness(0, 0.5), 0);
    EXPECT_NEAR(crossflow_effectiveness(1e-8, 0.7), 1e-8, 1e-15);
    EXPECT_LE(crossflow_effectiveness(60, 0.3), 1);
    EXPECT_EQ(crossflow_effectiveness(1e9, 0.3), crossflow_effectiveness(60, 0.3));
}

TEST(Crossflow, RisesWithTransferUnitsAndFallsWithTheRatio) {
    for (double ratio = 0; ratio <= 1; ratio += 0.05)
        for (double units = 0.05; units < 60; units *= 1.1) {
            const double here = crossflow_effectiveness(units, ratio);
            EXPECT_LE(here, 1);
            EXPECT_GE(crossflow_effectiveness(units * 1.05, ratio), here - 1e-13);
            EXPECT_LE(crossflow_effectiveness(units, ratio + 0.05), here + 1e-13);
            // Better than parallel flow, no better than counterflow.
            const double counter = ratio == 1 ? units / (1 + units)
                                              : (1 - std::exp(-units * (1 - ratio))) /
                                                    (1 - ratio * std::exp(-units * (1 - ratio)));
            const double parallel = (1 - std::exp(-units * (1 + ratio))) / (1 + ratio);
            EXPECT_LE(here, counter + 1e-12);
            EXPECT_GE(here, parallel - 1e-12);
        }
}

TEST(ChargeCooler, GivesToTheCoolingAirWhatTheChargeLoses) {
    samples::Dice dice(21);
    for (int i = 0; i < 2000; ++i) {
        const auto part = samples::part<ChargeCooler>(dice);
        const auto in = samples::dry_stream(dice);
        const auto surroundings = samples::surroundings(dice);
        const auto found = part.exchange(in, surroundings);
        const auto out = part.outlet(in, surroundings);
        const double lost = in.gas.enthalpy(in.temperature) - in.gas.enthalpy(out.temperature);
        EXPECT_NEAR(in.gas_flow() * lost, found.heat,
                    1e-12 * (std::abs(found.heat) + 3e6 * in.gas_flow()));
        const double low = std::min(in.temperature, found.cooling_temperature);
        const double high = std::max(in.temperature, found.cooling_temperature);
        EXPECT_GE(out.temperature, low - 1e-9);  // neither stream passes the other
        EXPECT_LE(out.temperature, high + 1e-9);
        EXPECT_LE(std::abs(found.heat), found.cooling_flow * 1100 * (high - low));
    }
}

TEST(ChargeCooler, CondensesWhatTheColdCoreCannotHold) {
    // 35 degC of dew point at 170 kPa meets a core cooled by air of 15 degC.
    auto in = media::ambient_stream(170e3, 360, 0.0222, 0.025);
    Surroundings surroundings = road(30);
    surroundings.ambient_temperature = 283;
    const auto out = cooler().outlet(in, surroundings);
    const auto found = cooler().exchange(in, surroundings);
    EXPECT_GT(found.condensed, 0.002);
    EXPECT_NEAR(found.condensed, out.liquid_share(), 1e-15);
    EXPECT_EQ(out.film_share, 1);
    const double sensible =
        in.gas_flow() * (in.gas.enthalpy(360) - in.gas.enthalpy(out.temperature));
    EXPECT_GT(found.heat, sensible + 0.8 * 2.4e6 * found.condensed * in.dry_air);
    EXPECT_NEAR(media::heat_given_off(in, out), found.heat, 1e-9 * found.heat);
    // The water that freezes out of dry winter air is none; that of a dry charge neither.
    EXPECT_EQ(cooler().exchange(samples::air(170e3, 360, 0.025), surroundings).condensed, 0);
    EXPECT_EQ(cooler().outlet(samples::air(170e3, 360, 0.025), surroundings).liquid_share(), 0);
}

TEST(ChargeCooler, NeitherWetStreamPassesTheOther) {
    samples::Dice dice(22);
    for (int i = 0; i < 1000; ++i) {
        const auto part = samples::part<ChargeCooler>(dice);
        const auto in = samples::stream(dice);
        const auto surroundings = samples::surroundings(dice);
        const auto found = part.exchange(in, surroundings);
        if (!(found.conductance > 0)) continue;
        const double warm = media::adiabatic_equilibrium(in).temperature;
        EXPECT_GE(found.outlet_temperature, std::min(warm, found.cooling_temperature) - 1e-6);
        EXPECT_LE(found.outlet_temperature, std::max(warm, found.cooling_temperature) + 1e-6);
    }
}

// Warm air rises through a core that stands, at 0.3 m/s; where none can reach it, nothing happens.
TEST(ChargeCooler, GivesHeatToAirThatRisesThroughIt) {
    const auto in = samples::air(160e3, 390, 0.025);
    const HeatExchange still = cooler().exchange(in, road(0));
    EXPECT_NEAR(still.cooling_flow, 1.16 * 0.03 * 0.3, 1e-12);
    EXPECT_GT(still.heat, 100);
    EXPECT_LT(still.outlet_temperature, 390 - 5);
    EXPECT_EQ(cooler().exchange(in, road(1)).heat, still.heat);
    EXPECT_EQ(cooler().exchange(in, road(-3)).heat, still.heat);
    EXPECT_GT(cooler().exchange(in, road(1.01)).heat, still.heat);
    ChargeCooler boxed = cooler();
    boxed.installed_share = 0;
    EXPECT_EQ(boxed.outlet(in, road(30)).temperature, 390);
    EXPECT_EQ(boxed.exchange(in, road(30)).heat, 0);
}

// While nothing turns the core has the day's air, whatever charge was there before.
TEST(ChargeCooler, CoolsWhileItStands) {
    const Surroundings around = road(0);
    for (const double T : {390.0, 320.0}) {
        const auto [core] = cooler().thermal_nodes(samples::air(160e3, T, 0.025), 0, around);
        EXPECT_NEAR(core.still_flow(around.ambient_temperature), 0, 1e-9);
        const double per_kelvin = -core.still_flow(around.ambient_temperature + 50) / 50;
        EXPECT_GT(per_kelvin, 3);
        EXPECT_LT(per_kelvin, 1.16 * 0.03 * 0.3 * 1010);  // no more than that air can carry
    }
}

TEST(ChargeCooler, CoolsMoreTheFasterItDrives) {
    const auto in = samples::air(160e3, 390, 0.025);
    double before = 390;
    for (double speed = 1.5; speed < 70; speed += 1) {
        const double now = cooler().outlet(in, road(speed)).temperature;
        EXPECT_LT(now, before);
        EXPECT_GT(now, 308);
        before = now;
    }
}

TEST(ChargeCooler, CoolsLittleFlowToTheCoolingAir) {
    const auto found = cooler().exchange(samples::air(160e3, 390, 1e-9), road(40));
    EXPECT_NEAR(found.outlet_temperature, 308, 1e-6);
    EXPECT_EQ(cooler().exchange(samples::air(160e3, 390, 0), road(40)).heat, 0);
}

TEST(ChargeCooler, WarmsAChargeThatIsColderThanTheCoolingAir) {
    const auto found = cooler().exchange(samples::air(90e3, 290, 0.02), road(30));
    EXPECT_LT(found.heat, 0);
    EXPECT_GT(found.outlet_temperature, 290);
    EXPECT_LT(found.outlet_temperature, 308);
}

TEST(ChargeCooler, LosesItsDropAtItsRatedFlowAndDensity) {
    auto part = cooler();
    part.drop = 4e3;
    const auto in = samples::air(160e3, 390, 0.025);
    const double mean = (390 + part.outlet(in, road(30)).temperature) / 2;
    part.at_density = 160e3 / (287.05 * mean);
    EXPECT_NEAR(part.outlet(in, road(30)).pressure, 156e3, 1e-6);
    part.at_density *= 2;  // the same drop, measured in air twice as dense
    EXPECT_NEAR(part.outlet(in, road(30)).pressure, 152e3, 1e-6);
    part.drop_exponent = 2;
    part.installed_share = 0;  // nothing cools it
    EXPECT_NEAR(part.outlet(samples::air(160e3, 390, 0.0125), road(0)).pressure,
                160e3 - 4e3 / 4 * part.at_density / samples::air(160e3, 390, 0).density(), 1e-6);
}
