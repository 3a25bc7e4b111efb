// Head, oil and block as lumps: how much heat goes which way.
#include <gtest/gtest.h>

#include "engines.hpp"

namespace windwall::engine {
namespace {

Intake blown() { return settled(single_499(), intake_at(5500 * rpm, 130e3, 340), {}); }

double rest(const media::LumpedNode& node) {
    return (node.heat + node.warm_conductance * node.warm_temperature +
            node.cold_conductance * node.cold_temperature) /
           (node.warm_conductance + node.cold_conductance);
}

/// W that leaves by the cold side at rest.
double passed(const media::LumpedNode& node) {
    return node.cold_conductance * (rest(node) - node.cold_temperature);
}

}  // namespace

// What the oil is given leaves through the block, and meets one resistance in two parts.
TEST(ThermalNodes, TheBlockPassesOnWhatTheOilTakes) {
    const auto [head, oil, block] = single_499().thermal_nodes(blown(), {});
    EXPECT_GT(oil.heat, 500);
    EXPECT_NEAR(passed(oil), oil.heat, 1e-9 * oil.heat);
    EXPECT_NEAR(passed(block), oil.heat, 1e-9 * oil.heat);
    EXPECT_NEAR(1 / block.warm_conductance + 1 / block.cold_conductance, 1 / oil.cold_conductance,
                1e-12);
    EXPECT_NEAR(block.warm_temperature, rest(oil), 1e-9);
}

// Of the heat to the walls the head passes on what the oil does not take.
TEST(ThermalNodes, HeadAndOilShareTheHeatToTheWalls) {
    Cylinder engine = single_499();
    const auto to_sink = [&](double share) {
        engine.oil.wall_share = share;
        return engine.thermal_nodes(blown(), {})[0].cold_conductance;
    };
    EXPECT_NEAR(to_sink(0.4) / to_sink(0), 0.6, 1e-12);
    const double once = to_sink(0);
    engine.walls.share /= 2;
    EXPECT_NEAR(to_sink(0) / once, 0.5, 1e-12);
}

}  // namespace windwall::engine
