#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/plenum.hpp"
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/charge/wall_heat.hpp"

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

// Colebrook's equation for commercial pipes, solved here; the explicit one is known to two per
// cent.
TEST(Duct, LosesColebrooksDropInTurbulentFlow) {
    const double mu = 1.8e-5, L = 1, D = 0.04, density = 1.2;
    for (const double roughness : {0.0, 1e-5, 2e-4})
        for (const double Re : {2e4, 1e5, 5e5}) {
            double root = 7;  // 1/sqrt(f)
            for (int i = 0; i < 40; ++i)
                root = -2 * std::log10(roughness / (3.7 * D) + 2.51 * root / Re);
            const double V = Re * mu / (density * D);
            const double expected = L / D * density * V * V / 2 / (root * root);
            const double flow = density * V * std::numbers::pi / 4 * D * D;
            EXPECT_NEAR(duct_pressure_drop(flow, density, mu, L, D, 0, roughness) / expected, 1,
                        0.03)
                << Re << " " << roughness;
        }
}

TEST(Duct, AddsBendsToFriction) {
    const double straight = duct_pressure_drop(0.03, 1.17, 1.85e-5, 1, 0.038, 0, 1e-5);
    const double bent = duct_pressure_drop(0.03, 1.17, 1.85e-5, 1, 0.038, 0.5, 1e-5);
    const double V = 0.03 / (1.17 * std::numbers::pi / 4 * 0.038 * 0.038);
    EXPECT_NEAR(bent - straight, 0.5 * 1.17 * V * V / 2, 1e-9);
    EXPECT_EQ(duct_pressure_drop(0, 1.17, 1.85e-5, 1, 0.038, 0.5, 1e-5), 0);
}

TEST(Duct, LosesPressureForItsOwnGasAndWall) {
    Duct duct;
    duct.length = 1;
    duct.bore = 0.038;
    duct.roughness = 0.1e-3;
    const auto in = samples::air(160e3, 420, 0.03);
    const auto out = duct.outlet(in, {});
    EXPECT_NEAR(in.pressure - out.pressure,
                duct_pressure_drop(0.03, in.density(), air_viscosity(420), 1, 0.038, 0.3, 0.1e-3),
                1e-9);
}

// Incropera: 3.66 in laminar flow between walls of one temperature; Dittus and Boelter beyond. Air
// at 300 K: k = 26.3 mW/(m K), mu = 1.846e-5 Pa s, Pr = 0.707.
TEST(Duct, TakesHeatByTheFilmOfHandbooks) {
    const double bore = 0.038, length = 0.5, outside = 1e12;
    const auto nusselt = [&](double Re) {
        const double flow = Re * std::numbers::pi * bore * 1.846e-5 / 4;
        return pipe_conductance(flow, air_viscosity(300), bore, length, outside) /
               (std::numbers::pi * length * 0.0263);
    };
    EXPECT_NEAR(nusselt(1e-3), 3.66, 0.04);
    // The laminar part is added everywhere, which keeps it smooth: 3 % too much at this flow.
    const double turbulent = 0.023 * std::pow(5e4, 0.8) * std::pow(0.707, 0.4);
    EXPECT_NEAR(nusselt(5e4) / turbulent, 1, 0.05);
}

TEST(Duct, GivesItsHeatToTheAirUnderTheBodywork) {
    Duct duct;
    duct.length = 0.5;
    duct.bore = 0.038;
    duct.conductance = 0;
    Surroundings surroundings;
    surroundings.under_hood_temperature = 330;
    const auto in = samples::air(160e3, 420, 0.03);
    EXPECT_EQ(duct.outlet(in, surroundings).temperature, 420);
    duct.conductance = 3;
    const double left = std::exp(-3 / (0.03 * 1004.675));
    EXPECT_NEAR(duct.outlet(in, surroundings).temperature, 330 + left * 90, 1e-9);
    EXPECT_GT(duct.outlet(samples::air(100e3, 300, 0.03), surroundings).temperature, 300);
    // From its own surface: some 0.7 W/K, and all of it lost where hardly anything flows.
    duct.conductance.reset();
    const double own = pipe_conductance(0.03, air_viscosity(420), 0.038, 0.5, 15);
    EXPECT_NEAR(own, 0.8, 0.15);
    EXPECT_NEAR(duct.outlet(samples::air(160e3, 420, 1e-9), surroundings).temperature, 330, 1e-6);
}

TEST(Plenum, GivesItsHeatToTheAirUnderTheBodywork) {
    Plenum plenum;
    plenum.volume = 8e-3;
    Surroundings surroundings;
    surroundings.under_hood_temperature = 320;
    EXPECT_NEAR(plenum.wall_conductance(15), 2.4, 1e-12);  // 0.24 m2 at 10 W/(m2 K)
    const auto in = samples::air(160e3, 400, 0.02);
    EXPECT_NEAR(plenum.outlet(in, surroundings).temperature,
                320 + 80 * std::exp(-2.4 / (0.02 * 1004.675)), 1e-9);
    surroundings.outside_film = 30;  // and 30 inside: 3.6 W/K
    EXPECT_NEAR(plenum.outlet(in, surroundings).temperature,
                320 + 80 * std::exp(-3.6 / (0.02 * 1004.675)), 1e-9);
}

TEST(OutsideFilm, GrowsWithTheRootOfTheAirsSpeed) {
    const double still = outside_film(0);
    EXPECT_GT(still, 2);
    EXPECT_NEAR(outside_film(4) - still, 2 * (outside_film(1) - still), 1e-12);
    EXPECT_EQ(outside_film(-1), still);
}
