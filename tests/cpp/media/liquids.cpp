#include "windwall/media/liquids.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/gas.hpp"

#include <gtest/gtest.h>

namespace {

using namespace windwall::media;

TEST(Liquids, WaterNeitherBurnsNorNeedsAir) {
    EXPECT_EQ(liquid(Vapour::water).heating_value, 0);
    EXPECT_EQ(liquid(Vapour::water).stoichiometric_ratio, 0);
}

/// Carbon, hydrogen and oxygen atoms of a molecule.
struct Formula {
    Vapour vapour;
    Species species;
    double carbon, hydrogen, oxygen;
};

constexpr Formula alcohols[] = {{Vapour::methanol, Species::methanol, 1, 4, 1},
                                {Vapour::ethanol, Species::ethanol, 2, 6, 1}};

TEST(Liquids, AirFollowsFromTheFormula) {
    for (const auto& [vapour, species, C, H, O] : alcohols) {
        const double oxygen = (C + H / 4 - O / 2) * constants::molar_mass_oxygen;
        const double air = oxygen / constants::air_oxygen_mass / liquid(vapour).molar_mass;
        EXPECT_NEAR(liquid(vapour).stoichiometric_ratio, air, 1e-3);
    }
}

TEST(Liquids, HeatingValueClosesWithTheEnthalpiesOfTheGases) {
    const auto molar = [](Species species) {
        const Gas gas = species_gas(species);
        return gas.enthalpy(298.15) * constants::molar_gas / gas.R;
    };
    for (const auto& [vapour, species, C, H, O] : alcohols) {
        const double burnt =
            molar(species) - C * molar(Species::carbon_dioxide) - H / 2 * molar(Species::water);
        const Liquid& row = liquid(vapour);
        EXPECT_NEAR(row.heating_value, burnt / row.molar_mass - row.latent_heat, 2e3);
    }
}

}  // namespace
