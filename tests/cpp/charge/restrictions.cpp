#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/pressure_loss.hpp"

#include <gtest/gtest.h>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::charge;

TEST(PressureLoss, SaturatesSmoothlyBeyondHalfThePressure) {
    EXPECT_DOUBLE_EQ(pressure_after(100e3, 30e3), 70e3);
    EXPECT_DOUBLE_EQ(pressure_after(100e3, 50e3), 50e3);
    EXPECT_NEAR((pressure_after(100e3, 50.001e3) - 50e3) / 1, -1, 1e-4);  // slope goes on
    EXPECT_GT(pressure_after(100e3, 1e9), 0);
    EXPECT_LT(pressure_after(100e3, 2e9), pressure_after(100e3, 1e9));
    EXPECT_DOUBLE_EQ(pressure_after(100e3, -30e3), 130e3);
}

TEST(Filter, LosesItsDropAtTheFlowItWasMeasuredAt) {
    for (double share : {0.0, 0.4, 1.0}) {
        EXPECT_DOUBLE_EQ(filter_pressure_drop(0.025, 1.2, 600, 0.025, share, 1.2), 600);
        EXPECT_DOUBLE_EQ(filter_pressure_drop(-0.025, 1.2, 600, 0.025, share, 1.2), -600);
        EXPECT_DOUBLE_EQ(filter_pressure_drop(0.025, 0.6, 600, 0.025, share, 1.2), 1200);
    }
    EXPECT_DOUBLE_EQ(filter_pressure_drop(0.05, 1.2, 600, 0.025, 0, 1.2), 2400);
    EXPECT_DOUBLE_EQ(filter_pressure_drop(0.05, 1.2, 600, 0.025, 1, 1.2), 1200);
}

TEST(Filter, KeepsTheTemperatureAndCountsTheVapours) {
    samples::Dice dice(7);
    auto in = samples::stream(dice);
    in.pressure = 100e3;
    Filter filter;
    filter.drop = 600;
    filter.at_flow = in.gas_flow();
    filter.at_density = in.density();
    const auto out = filter.outlet(in, {});
    EXPECT_NEAR(out.pressure, 100e3 - 600, 1e-9);
    EXPECT_EQ(out.temperature, in.temperature);
}

TEST(Duct, LosesHagenAndPoiseuillesDropInLaminarFlow) {
    // 128 mu L Q/(pi D^4)
    const double Q = 1e-5, mu = 1.8e-5, L = 2, D = 0.02;
    const double drop = duct_pressure_drop(Q * 1.2, 1.2, mu, L, D, 0, 0);
    EXPECT_NEAR(drop / (128 * mu * L * Q / (std::numbers::pi * D * D * D * D)), 1, 1e-6);
}

TEST(Duct, AddsBendsToFriction) {
    const double straight = duct_pressure_drop(0.03, 1.17, 1.85e-5, 1, 0.038, 0, 1e-5);
    const double bent = duct_pressure_drop(0.03, 1.17, 1.85e-5, 1, 0.038, 0.5, 1e-5);
    const double V = 0.03 / (1.17 * std::numbers::pi / 4 * 0.038 * 0.038);
    EXPECT_NEAR(bent - straight, 0.5 * 1.17 * V * V / 2, 1e-9);
    EXPECT_EQ(duct_pressure_drop(0, 1.17, 1.85e-5, 1, 0.038, 0.5, 1e-5), 0);
}

TEST(Duct, LosesPressureForItsOwnGasAndWallAndKeepsTheTemperature) {
    Duct duct;
    duct.length = 1;
    duct.bore = 0.038;
    duct.roughness = 0.1e-3;
    const auto in = samples::air(160e3, 420, 0.03);
    const auto out = duct.outlet(in, {});
    EXPECT_EQ(out.temperature, 420);
    EXPECT_NEAR(in.pressure - out.pressure,
                duct_pressure_drop(0.03, in.density(), air_viscosity(420), 1, 0.038, 0.3, 0.1e-3),
                1e-9);
}
