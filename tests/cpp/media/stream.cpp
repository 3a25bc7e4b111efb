#include "windwall/media/stream.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

namespace {

using namespace windwall::media;

TEST(Stream, AmbientAirCarriesItsWater) {
    const Stream air = ambient_stream(95e3, 300, 0.02, 0.03);
    EXPECT_DOUBLE_EQ(air.vapour_share(), 0.02);
    EXPECT_DOUBLE_EQ(air.gas_flow(), 0.03 * 1.02);
    EXPECT_EQ(air.vapour[index(Vapour::water)], 0.02);
    EXPECT_EQ(air.liquid, (std::array<double, 4>{}));
}

TEST(Stream, DensityIsTheSumOfPartialDensities) {
    const double w = 0.02, p = 95e3, T = 300;
    const double moles_air = 1 / constants::molar_mass_air,
                 moles_water = w / constants::molar_mass_water;
    const double share = moles_water / (moles_air + moles_water);
    const double expected =
        p / (constants::molar_gas * T) *
        ((1 - share) * constants::molar_mass_air + share * constants::molar_mass_water);
    EXPECT_NEAR(ambient_stream(p, T, w, 1).density(), expected, 1e-12);
}

TEST(Stream, LiquidAddsNeitherGasFlowNorVolume) {
    Stream stream = ambient_stream(95e3, 300, 0, 0.03);
    const double density = stream.density();
    stream.liquid[index(Vapour::methanol)] = 0.1;
    EXPECT_EQ(stream.gas_flow(), 0.03);
    EXPECT_EQ(stream.density(), density);
}

// The diameter of Sauter: of two sprays both the volume and the surface are kept.
TEST(WithLiquid, KeepsTheSurfaceOfBothSprays) {
    const Stream air = ambient_stream(95e3, 300, 0, 0.03);
    const std::array<double, 4> less{0.02, 0, 0, 0}, more{0.06, 0, 0, 0};
    const Stream both = with_liquid(with_liquid(air, less, 290, 40e-6), more, 290, 20e-6);
    EXPECT_NEAR(0.08 / both.drop_diameter, 0.02 / 40e-6 + 0.06 / 20e-6, 1e-9);
}

TEST(GasPhase, IsTheSameHoweverItIsMixed) {
    const std::array<double, 4> vapour{0.01, 0.02, 0.03, 0.08};
    const Gas gas = gas_phase(vapour);
    const double total = 1.14;
    const double shares[] = {1, 0.01, 0.02, 0.03, 0.08};
    const Gas parts[] = {dry_air(), species_gas(Species::water), species_gas(Species::methanol),
                         species_gas(Species::ethanol), species_gas(Species::petrol)};
    double R = 0, cp = 0, h = 0;
    for (std::size_t i = 0; i < 5; ++i) {
        R += shares[i] * parts[i].R / total;
        cp += shares[i] * parts[i].heat_capacity(330) / total;
        h += shares[i] * parts[i].enthalpy(330) / total;
    }
    EXPECT_NEAR(gas.R, R, 1e-10);
    EXPECT_NEAR(gas.heat_capacity(330), cp, 1e-9);
    EXPECT_NEAR(gas.enthalpy(330), h, 1e-6);
}

TEST(GasPhase, WithoutVapourIsDryAir) {
    EXPECT_EQ(gas_phase({}).R, dry_air().R);
    EXPECT_EQ(gas_phase({}).c, dry_air().c);
}

}  // namespace
