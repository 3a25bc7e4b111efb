// What the walls of the path weigh: they warm up as so much aluminium.
#include "windwall/charge/duct.hpp"
#include "windwall/charge/plenum.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

// CRC Handbook of Chemistry and Physics: 2.70 g/cm3, 0.897 J/(g K).
constexpr double aluminium = 2700 * 897;  // J/(m3 K)

}  // namespace

TEST(ThermalNodes, OfADuctIsATube) {
    Duct duct;
    duct.bore = 0.05;
    duct.length = 0.4;
    duct.wall_thickness = 0.002;
    const auto [wall] = duct.thermal_nodes(samples::air(150e3, 360, 0.03), 0, {});
    const double volume = std::numbers::pi * 0.05 * 0.002 * 0.4;
    EXPECT_NEAR(wall.heat_capacity / (aluminium * volume), 1, 0.01);
}

TEST(ThermalNodes, OfAPlenumIsACube) {
    Plenum plenum;
    plenum.volume = 0.008;  // edge of 0.2 m
    plenum.wall_thickness = 0.0015;
    const auto [wall] = plenum.thermal_nodes(samples::air(150e3, 360, 0.03), 0, {});
    EXPECT_NEAR(wall.heat_capacity / (aluminium * 6 * 0.04 * 0.0015), 1, 0.01);
    // Two films in a row: with one that holds nothing back outside, the inner one is left.
    const double inside = plenum.wall_conductance(1e12) / (6 * 0.04);
    EXPECT_NEAR(1 / plenum.wall_conductance(15) * (6 * 0.04), 1 / inside + 1 / 15.0, 1e-9);
}
