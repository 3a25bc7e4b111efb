#include "windwall/media/equilibrium.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/drops.hpp"
#include "windwall/media/humid_air.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/media/vapour_pressure.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "allocations.hpp"
#include "dice.hpp"

namespace {

using namespace windwall;
using namespace windwall::media;
using samples::Dice;

/// Air with vapour and any of the liquids, each absent two times in five.
Stream anything(Dice& dice) {
    Stream in = ambient_stream(dice.decades(15e3, 400e3), dice.between(240, 700),
                               dice.between(0, 0.03), 0.02);
    std::array<double, 4> added{};
    for (double& share : added)
        if (dice.between(0, 1) > 0.4) share = dice.between(0, 0.08);
    return with_liquid(in, added, dice.between(270, 320), 50e-6);
}

Stream wet(double pressure, double celsius, double humidity, std::array<double, 4> liquid) {
    return with_liquid(ambient_stream(pressure, celsius + 273.15, humidity, 1), liquid, 298.15,
                       50e-6);
}

TEST(Equilibrium, ClosesItsEnergyWhateverEvaporates) {
    Dice dice(31);
    for (int i = 0; i < 5000; ++i) {
        const Stream in = anything(dice);
        const Stream out = adiabatic_equilibrium(in);
        const double exchanged = 1e5 + std::abs(enthalpy_per_dry_air(in) - in.fed);
        EXPECT_NEAR(enthalpy_per_dry_air(out), enthalpy_per_dry_air(in), 1e-9 * exchanged);
        for (std::size_t k = 0; k < 4; ++k)
            EXPECT_NEAR(out.vapour[k] + out.liquid[k], in.vapour[k] + in.liquid[k], 1e-14);
        EXPECT_GT(out.temperature, 150);
        EXPECT_LT(out.temperature, 710);
    }
}

TEST(Equilibrium, IsAtRestOnceReached) {
    Dice dice(32);
    for (int i = 0; i < 2000; ++i) {
        const Stream once = adiabatic_equilibrium(anything(dice));
        const Stream twice = adiabatic_equilibrium(once);
        EXPECT_NEAR(twice.temperature, once.temperature, 1e-8);
        EXPECT_NEAR(twice.liquid_share(), once.liquid_share(), 1e-10);
    }
}

TEST(Equilibrium, HoldsEachLiquidAgainstItsVapour) {
    Dice dice(33);
    int both = 0;
    for (int i = 0; i < 2000; ++i) {
        const Stream out = adiabatic_equilibrium(anything(dice));
        const double moles_air = 1 / constants::molar_mass_air;
        std::array<double, 4> gas{}, liquid{};
        double all = moles_air;
        for (const Vapour kind : all_vapours) {
            gas[index(kind)] = out.vapour[index(kind)] / media::liquid(kind).molar_mass;
            liquid[index(kind)] = out.liquid[index(kind)] / media::liquid(kind).molar_mass;
            all += gas[index(kind)];
        }
        const double mixture = liquid[0] + liquid[1] + liquid[2];
        if (mixture < 1e-3 || liquid[1] * liquid[0] < 1e-9) continue;
        const double x = (liquid[1] + liquid[2]) / mixture;
        const Activity held = activity(
            alcohol_in_water(
                (out.vapour[1] + out.liquid[1]) / media::liquid(Vapour::methanol).molar_mass,
                (out.vapour[2] + out.liquid[2]) / media::liquid(Vapour::ethanol).molar_mass),
            x);
        const double T = out.temperature;
        EXPECT_NEAR(gas[0] / all * out.pressure,
                    held.water * liquid[0] / mixture * vapour_pressure(Vapour::water, T),
                    1e-7 * out.pressure);
        EXPECT_NEAR(gas[1] / all * out.pressure,
                    held.alcohol * liquid[1] / mixture * vapour_pressure(Vapour::methanol, T),
                    1e-7 * out.pressure);
        ++both;
    }
    EXPECT_GT(both, 200);
}

TEST(Equilibrium, BendsSmoothlyWithItsInlet) {
    // A solver outside takes differences: they must not jump with the last digits of a search.
    for (const auto& liquid : {std::array<double, 4>{0.02, 0, 0, 0},
                               {0.02, 0.02, 0, 0},
                               {0.005, 0, 0.02, 0.05},
                               {0, 0, 0, 0.07}}) {
        const double h = 1e-4;
        const auto at = [&](double t) {
            return adiabatic_equilibrium(wet(120e3, t, 0.01, liquid)).temperature;
        };
        for (double t = 10; t < 80; t += 7.3) {
            const double slope = (at(t + h) - at(t - h)) / (2 * h);
            const double wide = (at(t + 10 * h) - at(t - 10 * h)) / (20 * h);
            EXPECT_NEAR(slope, wide, 1e-5) << t;
            EXPECT_GT(slope, 0);
        }
    }
}

TEST(Equilibrium, LeavesDryAirAlone) {
    const Stream dry = ambient_stream(100e3, 300, 0.01, 0.02);
    EXPECT_TRUE(is_dry(dry));
    EXPECT_EQ(adiabatic_equilibrium(dry).temperature, 300);
    EXPECT_FALSE(is_dry(ambient_stream(100e3, 280, 0.01, 0.02)));
    EXPECT_GT(adiabatic_equilibrium(ambient_stream(100e3, 280, 0.01, 0.02)).temperature, 280);
}

TEST(Equilibrium, AllocatesNothing) {
    Dice dice(34);
    const Stream in = anything(dice);
    const std::size_t before = allocations();
    const double T = adiabatic_equilibrium(in).temperature + evaporate(in, 0.05).temperature;
    EXPECT_EQ(allocations(), before);
    EXPECT_GT(T, 0);
}

TEST(Evaporate, NeverPassesTheCeiling) {
    // Ten seconds would evaporate every drop; saturated air takes a third of the water.
    const Stream in = wet(101325, 25, humidity_ratio(0.5, 298.15, 101325), {0.01});
    const Stream ceiling = adiabatic_equilibrium(in), out = evaporate(in, 10);
    EXPECT_NEAR(out.liquid_share(), ceiling.liquid_share(), 2e-4);
    EXPECT_GE(out.liquid_share(), ceiling.liquid_share());
    EXPECT_GE(out.temperature, ceiling.temperature);
    EXPECT_GT(out.liquid_share(), 0.65 * 0.01);
}

TEST(Evaporate, FollowsTheDropsWhereTheAirWouldTakeAll) {
    const Stream in = wet(160e3, 90, 0.0062, {0.001});
    const double K = drop_rate(in).evaporation_constant;
    const double X = evaporated_share(K, 0.035, 50e-6);
    const Stream out = evaporate(in, 0.035);
    EXPECT_NEAR(1 - out.liquid_share() / 0.001, X, 1e-3 * X);
    EXPECT_NEAR(out.drop_diameter, 50e-6 * std::cbrt(1 - X), 1e-9);
    EXPECT_NEAR(enthalpy_per_dry_air(out), enthalpy_per_dry_air(in), 1e-6);
}

TEST(Evaporate, LeavesTheFilmAlone) {
    Stream in = wet(160e3, 90, 0.0062, {0.01});
    in.film_share = 1;
    EXPECT_EQ(evaporate(in, 1).liquid_share(), in.liquid_share());
    in.film_share = 0.4;
    const Stream out = evaporate(in, 100);
    EXPECT_NEAR(out.film_share * out.liquid_share(), 0.4 * in.liquid_share(), 1e-4);
}

TEST(StreamEnthalpy, HeatGivenOffIsNoneWhereOnlyLiquidIsPutIn) {
    const Stream in = ambient_stream(150e3, 360, 0.01, 0.02);
    const Stream out = with_liquid(in, {0.01, 0.02, 0, 0.03}, 280, 50e-6);
    EXPECT_NEAR(heat_given_off(in, out), 0, 1e-8);
    EXPECT_LT(out.temperature, in.temperature);
    EXPECT_NEAR(heat_given_off(in, adiabatic_equilibrium(out)), 0, 1e-8);
}

TEST(StreamEnthalpy, LatentHeatIsWhatVapourHoldsMore) {
    constexpr std::array<Species, 4> species{Species::water, Species::methanol, Species::ethanol,
                                             Species::petrol};
    for (const Vapour kind : all_vapours)
        EXPECT_NEAR(
            species_gas(species[index(kind)]).enthalpy(298.15) - liquid_enthalpy(kind, 298.15),
            liquid(kind).latent_heat, 1e-6 * liquid(kind).latent_heat);
}

}  // namespace
