// Head, oil and block as lumps: how much heat goes which way.
#include "windwall/engine/geometry.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

Intake blown() { return settled(single_499(), intake_at(5500 * rpm, 130e3, 340), {}); }

auto nodes(const Cylinder& engine, const Intake& intake) {
    return engine.thermal_nodes(intake, {}, engine.work(intake, {}, 0));
}

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
    const auto [head, oil, block] = nodes(single_499(), blown());
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
    const Intake intake = blown();
    const Work work = engine.work(intake, {}, 0);
    const double to_walls = heat(work, engine.exhaust_gas(intake, {}, work)).walls;
    const auto shared = [&](double share) {
        engine.oil.wall_share = share;
        return engine.thermal_nodes(intake, {}, work);
    };
    const auto [all, rubbed, without] = shared(0);
    const auto [less, oiled, with] = shared(0.4);
    EXPECT_NEAR(passed(all), to_walls, 1e-9 * to_walls);
    EXPECT_NEAR(passed(less) + oiled.heat, to_walls + rubbed.heat, 1e-9 * to_walls);
    EXPECT_GT(oiled.heat, rubbed.heat + 0.2 * to_walls);
    EXPECT_NEAR(rest(less), engine.temperatures(intake, {}).head, 1e-9);
}

/// W that the charge brings above the air that came in.
double brought(const Intake& intake) {
    const media::Stream& charge = intake.charge;
    return charge.dry_air *
           (media::enthalpy_per_dry_air(charge) - charge.fed - intake.inlet_enthalpy);
}

// Head, oil, exhaust and crank get what the fuel gives and no more, however cold the metal is: what
// is left is work of thick oil that nothing is warmed by.
TEST(ThermalNodes, TakeNoMoreThanTheFuelGives) {
    const Cylinder engine = single_499();
    for (const auto& [speed, pressure, retard] : {std::tuple{1200 * rpm, 38e3, 20 * degree},
                                                  {3000 * rpm, 60e3, 0.0},
                                                  {5500 * rpm, 130e3, 5 * degree}})
        for (const double T : {263.0, 330.0, 373.0}) {
            Intake intake = with_head(intake_at(speed, pressure, 320), T);
            intake.oil_temperature = intake.block_temperature = T;
            intake = settled(engine, intake, {});
            const Work work = engine.work(intake, {}, retard);
            const ExhaustGas gas = engine.exhaust_gas(intake, {}, work);
            const auto [head, oil, block] = engine.thermal_nodes(intake, {}, work);
            const double into_head =
                head.heat + head.warm_conductance * (head.warm_temperature - T);
            const double got = into_head + oil.heat + gas.heat + heat(work, gas).unburnt +
                               work.power() + work.accessories;
            const double warming = engine.friction.mean_pressure(engine.piston_speed(speed), 0) *
                                   swept_flow(engine.swept_volume(), speed);
            const double given = work.fuel_power + brought(intake);
            EXPECT_NEAR(got + work.rubbing - warming, given, 1e-9 * given) << speed << " " << T;
            // Warm oil is heated by friction as without boost, of which a vacuum leaves less.
            EXPECT_LE(got, given * (T < 350 ? 1 + 1e-9 : 1.015)) << speed << " " << T;
            EXPECT_GT(into_head, 0.1 * work.fuel_power);
            EXPECT_LT(into_head, 0.55 * work.fuel_power);
        }
}

// Nothing burns: the flows alone say how the head cools, and nothing but them.
TEST(ThermalNodes, GoByTheFlowsWhereNothingBurns) {
    const Cylinder engine = single_499();
    const Intake intake = blown();
    const media::LumpedNode head = engine.thermal_nodes(intake, {}, {})[0];
    EXPECT_NEAR(rest(head), engine.temperatures(intake, {}).head, 1e-9);
    EXPECT_GT(head.cold_conductance, 0);
}

// Behind a thermostat the coolant takes heat and gives none: metal that is colder than it stays so.
TEST(ThermalNodes, ACoolantWarmsNothing) {
    Cylinder engine = single_499();
    engine.cooling.by = CoolingBy::liquid;
    const double coolant = engine.cooling.coolant_temperature, cold = coolant - 60;
    Intake intake = with_head(blown(), cold);
    intake.oil_temperature = intake.block_temperature = cold;
    const Work work = engine.work(intake, {}, 0);
    const auto [head, oil, block] = engine.thermal_nodes(intake, {}, work);
    EXPECT_NEAR(head.heat_flow(cold),
                head.heat + head.warm_conductance * (head.warm_temperature - cold), 1e-9);
    EXPECT_EQ(block.heat_flow(cold), 0);
    EXPECT_LT(block.heat_flow(coolant + 5), 0);
    engine.cooling.by = CoolingBy::fan;  // cold metal is warmed by a warmer day
    EXPECT_GT(nodes(engine, with_head(intake, cold))[2].heat_flow(intake.ambient_temperature - 20),
              0);
}

}  // namespace windwall::engine
