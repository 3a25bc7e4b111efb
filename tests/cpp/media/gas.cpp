#include "windwall/media/gas.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/liquids.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace windwall::media;

constexpr Species all[] = {Species::nitrogen,       Species::oxygen, Species::argon,
                           Species::carbon_dioxide, Species::water,  Species::methanol,
                           Species::ethanol,        Species::petrol};

TEST(Gas, HeatCapacityIsTheSlopeOfEnthalpyInsideAndOutsideTheRange) {
    for (const Species species : all) {
        const Gas gas = species_gas(species);
        for (const double T : {100.0, 199.0, 200.0, 250.0, 400.0, 999.0, 1000.0, 1800.0}) {
            const double h = 1e-2;
            const double slope = (gas.enthalpy(T + h) - gas.enthalpy(T - h)) / (2 * h);
            // The ends of the range have a corner in cp: half a step of its slope is allowed.
            EXPECT_NEAR(slope / gas.heat_capacity(T), 1, 2e-5) << static_cast<int>(species) << T;
        }
    }
}

TEST(Gas, HeatCapacityStaysAtTheEndsOfTheRange) {
    const Gas water = species_gas(Species::water);
    EXPECT_EQ(water.heat_capacity(20), water.heat_capacity(200));
    EXPECT_EQ(water.heat_capacity(5000), water.heat_capacity(1000));
    EXPECT_GT(water.heat_capacity(999), water.heat_capacity(998));
}

TEST(Gas, TemperatureIsTheInverseOfEnthalpy) {
    for (const Species species : all) {
        const Gas gas = species_gas(species);
        for (const double T : {150.0, 273.0, 350.0, 700.0, 1300.0})
            for (const double guess : {200.0, 298.0, 990.0})
                EXPECT_NEAR(gas.temperature(gas.enthalpy(T), guess), T, 1e-8 * T);
    }
}

TEST(Gas, TemperatureIsNeverBelowOneKelvin) { EXPECT_EQ(dry_air().temperature(-1e9, 300), 1); }

TEST(Gas, MixingIsLinearByMass) {
    const Gas air = dry_air(), vapour = species_gas(Species::methanol);
    const Gas mixture = mixed(air, 0.25, vapour);
    for (const double T : {230.0, 298.15, 600.0}) {
        EXPECT_NEAR(1.25 * mixture.heat_capacity(T),
                    air.heat_capacity(T) + 0.25 * vapour.heat_capacity(T), 1e-9);
        EXPECT_NEAR(1.25 * mixture.enthalpy(T), air.enthalpy(T) + 0.25 * vapour.enthalpy(T), 1e-6);
    }
    EXPECT_NEAR(1.25 * mixture.R, air.R + 0.25 * vapour.R, 1e-12);
}

TEST(Gas, AirIsItsStatedComposition) {
    namespace c = constants;
    EXPECT_DOUBLE_EQ(c::air_nitrogen + c::air_oxygen + c::air_argon + c::air_carbon_dioxide, 1);
    EXPECT_DOUBLE_EQ(dry_air().R, c::gas_constant_air);
    EXPECT_NEAR(c::air_oxygen * c::molar_mass_oxygen / c::molar_mass_air, c::air_oxygen_mass, 1e-5);
}

TEST(Gas, PerfectGasHasOneHeatCapacity) {
    const Gas gas = perfect_gas(287.05, 1004.675);
    EXPECT_EQ(gas.heat_capacity(250), 1004.675);
    EXPECT_EQ(gas.heat_capacity(800), 1004.675);
    EXPECT_NEAR(gas.gamma(400), 1.4, 1e-12);
    EXPECT_NEAR(gas.enthalpy(298.15), 0, 1e-9);
    EXPECT_NEAR(gas.enthalpy(1298.15), 1004.675e3, 1e-6);
}

TEST(Gas, TheLiquidTableAgreesWithTheGases) {
    constexpr Species species[] = {Species::water, Species::methanol, Species::ethanol,
                                   Species::petrol};
    for (const Vapour vapour : all_vapours) {
        const double molar_mass = constants::molar_gas / species_gas(species[index(vapour)]).R;
        EXPECT_NEAR(liquid(vapour).molar_mass / molar_mass, 1, 5e-5);
    }
}

TEST(Gas, IsTotal) {
    for (const double T : {-1e9, 0.0, 1e9}) {
        EXPECT_TRUE(std::isfinite(dry_air().enthalpy(T)));
        EXPECT_GT(dry_air().gamma(T), 1.3);
    }
}

}  // namespace
