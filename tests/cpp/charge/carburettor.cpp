#include "windwall/charge/carburettor.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "wet_samples.hpp"

using namespace windwall;
using namespace windwall::charge;

TEST(Carburettor, LosesAShareOfItsDepression) {
    Carburettor part;
    part.venturi = 0.028;
    const auto in = humid(100e3, 298.15, 0.02);
    const double area = 0.85 * std::numbers::pi / 4 * 0.028 * 0.028;
    const double bernoulli = std::pow(in.gas_flow() / area, 2) / (2 * in.density());
    EXPECT_NEAR(part.depression(in), bernoulli, 1e-9);
    EXPECT_NEAR(part.outlet(in, day()).pressure, 100e3 - 0.25 * bernoulli, 1e-6);
}

TEST(Carburettor, CoolsTheChargeWithTheFuelThatEvaporates) {
    Carburettor part;
    part.venturi = 0.028;
    Surroundings surroundings = day();
    surroundings.fuel_demand = {0, 0, 0, 0.08};
    // Dry air, or its water would begin to condense and warm the charge.
    const auto in = media::ambient_stream(100e3, 298.15, 0, 0.02);
    const auto out = part.outlet(in, surroundings);
    EXPECT_NEAR(out.vapour[3] + out.liquid[3], 0.08, 1e-15);
    EXPECT_NEAR(out.vapour[3], 0.3 * 0.08, 0.002);
    EXPECT_NEAR(in.temperature - out.temperature, 0.3 * 0.08 * 349e3 / (1005 + 0.08 * 2000), 0.3);
    part.evaporated = 1;
    EXPECT_LT(part.outlet(in, surroundings).vapour[3], 0.08);  // the heavy ends stay behind
    part.evaporated = 0;
    EXPECT_NEAR(part.outlet(in, surroundings).temperature, 298.15, 1e-9);
}

TEST(Carburettor, StarvesUnderBoostWhenItsBowlStandsInTheOpen) {
    Carburettor part;
    part.venturi = 0.028;
    Surroundings surroundings = day();
    surroundings.fuel_demand = {0, 0, 0, 0.08};
    EXPECT_EQ(part.metering(humid(150e3, 350, 0.03), surroundings), 1);
    part.bowl_referenced = false;
    EXPECT_EQ(part.metering(humid(150e3, 350, 0.03), surroundings), 0);
    EXPECT_EQ(part.outlet(humid(150e3, 350, 0.03), surroundings).liquid_share(), 0);
    const auto in = humid(101e3, 300, 0.03);
    const double d = part.depression(in);
    EXPECT_NEAR(part.metering(in, surroundings), std::sqrt((d - 1e3) / d), 1e-3);
    EXPECT_GT(part.metering(humid(99e3, 300, 0.03), surroundings), 1);
    EXPECT_LE(part.metering(humid(30e3, 300, 0.001), surroundings), 2);
}
