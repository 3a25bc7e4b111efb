#include "windwall/media/fuel.hpp"

#include "windwall/media/liquids.hpp"

#include <gtest/gtest.h>

namespace {

using namespace windwall;
using namespace windwall::media;

Fuel blend(double ethanol) {
    Fuel fuel;
    fuel.ethanol = ethanol;
    return fuel;
}

void expect_is(const Fuel& fuel, const Liquid& pure) {
    EXPECT_DOUBLE_EQ(fuel.stoichiometric_ratio(), pure.stoichiometric_ratio);
    EXPECT_DOUBLE_EQ(fuel.heating_value(), pure.heating_value);
    EXPECT_DOUBLE_EQ(fuel.density(), pure.density);
    EXPECT_DOUBLE_EQ(fuel.latent_heat(), pure.latent_heat);
    EXPECT_DOUBLE_EQ(fuel.heat_capacity(), pure.heat_capacity);
}

TEST(Fuel, EndsAtThePureLiquids) {
    expect_is(blend(0), liquid(Vapour::petrol));
    expect_is(blend(1), liquid(Vapour::ethanol));
    Fuel neat;
    neat.methanol = 1;
    expect_is(neat, liquid(Vapour::methanol));
    EXPECT_EQ(blend(0).ethanol_mass_share(), 0);
    EXPECT_EQ(blend(1).ethanol_mass_share(), 1);
}

TEST(Fuel, ALitreOfBlendHoldsTheHeatOfItsParts) {
    const Liquid &petrol = liquid(Vapour::petrol), &alcohol = liquid(Vapour::ethanol);
    for (const double v : {0.1, 0.5, 0.85}) {
        const Fuel fuel = blend(v);
        EXPECT_NEAR(fuel.density(), (1 - v) * petrol.density + v * alcohol.density, 1e-9);
        EXPECT_NEAR(fuel.density() * fuel.heating_value(),
                    (1 - v) * petrol.density * petrol.heating_value +
                        v * alcohol.density * alcohol.heating_value,
                    1);
        EXPECT_NEAR(fuel.density() * fuel.stoichiometric_ratio(),
                    (1 - v) * petrol.density * petrol.stoichiometric_ratio +
                        v * alcohol.density * alcohol.stoichiometric_ratio,
                    1e-8);
        EXPECT_NEAR(fuel.density() * fuel.latent_heat(),
                    (1 - v) * petrol.density * petrol.latent_heat +
                        v * alcohol.density * alcohol.latent_heat,
                    1e-2);
    }
}

TEST(Fuel, TakesWhatTheBuilderStates) {
    Fuel fuel = blend(0.1);
    fuel.stated_stoichiometric_ratio = 14.2;
    fuel.stated_heating_value = 42e6;
    fuel.stated_density = 755;
    fuel.stated_latent_heat = 400e3;
    EXPECT_EQ(fuel.stoichiometric_ratio(), 14.2);
    EXPECT_EQ(fuel.heating_value(), 42e6);
    EXPECT_EQ(fuel.density(), 755);
    EXPECT_EQ(fuel.latent_heat(), 400e3);
}

TEST(Fuel, OctaneIndexRunsFromResearchToMotor) {
    Fuel fuel;
    fuel.research_octane = 98;
    fuel.motor_octane = 88;
    EXPECT_EQ(fuel.octane_index(0), 98);
    EXPECT_EQ(fuel.octane_index(1), 88);
    EXPECT_DOUBLE_EQ(fuel.octane_index(0.5), 93);
    EXPECT_DOUBLE_EQ(fuel.octane_index(-0.3), 101);
}

TEST(Fuel, ComplainsOfAMotorNumberAboveTheResearchNumber) {
    Fuel fuel;
    EXPECT_FALSE(fuel.check());
    fuel.motor_octane = 99;
    ASSERT_TRUE(fuel.check());
    EXPECT_EQ(fuel.check()->key, "motor_octane");
}

TEST(Fuel, EveryDefaultHasASpreadAndASource) {
    for (const fields::Row& row : Fuel::rows()) {
        if (row.member.type == fields::FieldType::choice) continue;
        EXPECT_LT(row.range.low, row.range.high) << row.key;
        if (row.need != fields::Need::with_default) continue;
        EXPECT_GE(row.sigma, 0) << row.key;
        EXPECT_FALSE(row.source.empty()) << row.key;
    }
    EXPECT_EQ(Fuel::rows().size(), 11u);
}

// 10 % of ethanol by volume is 0.1 x 785 of 0.9 x 745 + 0.1 x 785 by mass.
TEST(Fuel, SharesByVolumeAndByMassMeet) {
    Fuel volume = blend(0.10);
    volume.methanol = 0.05;
    const double all = 0.85 * 745 + 0.10 * 785 + 0.05 * 787;
    EXPECT_NEAR(volume.shares()[2], 0.10 * 785 / all, 1e-15);
    EXPECT_NEAR(volume.shares()[1], 0.05 * 787 / all, 1e-15);
    Fuel mass;
    mass.ethanol_by_mass = volume.shares()[2];
    mass.methanol_by_mass = volume.shares()[1];
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_NEAR(mass.shares()[i], volume.shares()[i], 1e-15) << i;
    EXPECT_NEAR(mass.density(), volume.density(), 1e-9);
    EXPECT_NEAR(mass.stoichiometric_ratio(), volume.stoichiometric_ratio(), 1e-12);
    EXPECT_EQ(mass.shares()[0], 0);
}

TEST(Fuel, ComplainsOfAlcoholStatedTwiceOrTooMuch) {
    Fuel both = blend(0.1);
    both.methanol_by_mass = 0.05;
    ASSERT_TRUE(both.check());
    EXPECT_EQ(both.check()->key, "methanol_by_mass");
    Fuel full = blend(0.6);
    full.methanol = 0.6;
    ASSERT_TRUE(full.check());
    Fuel heavy;
    heavy.ethanol_by_mass = 0.7;
    EXPECT_FALSE(heavy.check());
    heavy.methanol_by_mass = 0.4;
    EXPECT_TRUE(heavy.check());
}

// A number as sold is not touched; one of the petrol grows with the molecules of alcohol.
TEST(Fuel, OctaneOfThePetrolIsBlendedByMolecules) {
    Fuel fuel = blend(0.10);
    EXPECT_EQ(fuel.blend_research_octane(), 95);
    fuel.octane_of = OctaneOf::petrol;
    fuel.research_octane = 91;
    fuel.motor_octane = 82;
    const double alcohol = 0.1 * 785 / 46.06844e-3, petrol = 0.9 * 745 / 105.97e-3;
    const double x = alcohol / (alcohol + petrol);
    EXPECT_NEAR(fuel.alcohol_molar_share(), x, 1e-12);
    EXPECT_NEAR(fuel.blend_research_octane(), 91 + x * (109 - 91), 1e-12);
    EXPECT_NEAR(fuel.blend_motor_octane(), 82 + x * (90 - 82), 1e-12);
    EXPECT_NEAR(fuel.octane_index(0.5),
                (fuel.blend_research_octane() + fuel.blend_motor_octane()) / 2, 1e-12);
}

}  // namespace
