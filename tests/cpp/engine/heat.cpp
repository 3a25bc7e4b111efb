// Head and oil: two resistances in series, known at one point.

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

/// Full throttle without a blower on the day the cooling is known for.
Intake known_point(const Cylinder& engine, double speed) {
    Intake intake = intake_at(speed, 101325, 298.15, 101325);
    intake.road_speed = 25;
    return settled(engine, intake, {});
}

Cylinder open_engine() {
    Cylinder engine = single_499();
    engine.exhaust.back_pressure = 0;
    engine.lambda = 1 / 1.17;
    return engine;
}

TEST(Head, IsWhatWasKnownAtTheKnownPoint) {
    for (const CoolingBy by : {CoolingBy::fan, CoolingBy::ram_air, CoolingBy::liquid}) {
        Cylinder engine = open_engine();
        engine.cooling.by = by;
        const Intake intake = known_point(engine, engine.rev_limit);
        const Temperatures now = engine.temperatures(intake, {});
        EXPECT_NEAR(now.head, 473.15, 0.5) << static_cast<int>(by);
        EXPECT_NEAR(now.oil, 373.15, 1.0) << static_cast<int>(by);
    }
}

TEST(Head, GoesBetweenAirAndGas) {
    Cylinder engine = open_engine();
    Intake intake = known_point(engine, 500);
    intake.charge.dry_air = 1e-9;  // a thousandth of the known flow is the least that counts
    EXPECT_NEAR(engine.temperatures(intake, {}).head, 298.15, 10);
    intake.charge.dry_air = 1e6;
    EXPECT_NEAR(engine.temperatures(intake, {}).head, 894, 5);
}

TEST(Head, RisesWithChargeAndFallsWithWhatCools) {
    Cylinder engine = open_engine();
    const Intake usual = known_point(engine, 500);
    const auto head = [&](const Intake& intake) { return engine.temperatures(intake, {}).head; };
    Intake more = usual, hot = usual, thin = usual;
    more.charge.dry_air *= 1.5;
    EXPECT_GT(head(more), head(usual) + 15);
    hot.ambient_temperature += 20;
    EXPECT_GT(head(hot), head(usual) + 10);
    thin.ambient_pressure *= 0.8;
    EXPECT_GT(head(thin), head(usual));
    engine.cooling.by = CoolingBy::ram_air;
    Intake fast = usual;
    fast.road_speed *= 2;
    EXPECT_LT(head(fast), head(usual) - 20);
    engine.cooling.by = CoolingBy::liquid;
    EXPECT_EQ(head(fast), head(usual));
    EXPECT_EQ(head(hot), head(usual));
    const double at_90 = head(usual);
    engine.cooling.coolant_temperature += 20;
    // The known head stays, so its share of the way from coolant to gas shrinks; more charge
    // counts.
    EXPECT_LT(head(more) - head(usual), 30);
    EXPECT_NEAR(head(usual), at_90, 10);
}

// What was measured on this engine holds where it was measured, and moves from there: with a
// blower's charge, here, and with more of it.
TEST(Head, MeasuredHoldsWhereItWasMeasured) {
    Cylinder engine = open_engine();
    engine.valves.flow_coefficient = 3;  // the flow of the known point, not the drop in the valves
    engine.head_temperature = 450;
    engine.cooling.known_manifold_pressure = 150e3;
    engine.cooling.known_charge_temperature = 350;
    engine.cooling.known_engine_speed = 500;
    const auto head = [&](double pressure) {
        Intake intake = intake_at(500, pressure, 350, 101325);
        intake.exhaust_pressure = pressure;
        return engine.temperatures(settled(engine, intake, {}), {}).head;
    };
    EXPECT_NEAR(head(150e3), 450, 1);
    EXPECT_GT(head(180e3), 450 + 5);
    EXPECT_LT(head(100e3), 450 - 10);
}

// From where it was before, by the time constant of the lump that comes to rest at the same place
// by what its flows alone say, as at the known point.
TEST(Head, IsOnItsWayInAShortPull) {
    Cylinder engine = open_engine();
    const Intake intake = known_point(engine, 500);
    const auto head = [&](double seconds) {
        engine.cooling.pull_time = seconds;
        return engine.temperatures(intake, {}).head;
    };
    const auto node = engine.thermal_nodes(intake, {}, {})[0];
    const double rest = engine.temperatures(intake, {}).head;
    EXPECT_EQ(head(0), engine.cooling.temperature_before);
    EXPECT_NEAR(head(3600), rest, 1e-6);
    const double before = engine.cooling.temperature_before, step = 0.01;
    EXPECT_NEAR((head(step) - before) / step, node.heat_flow(before) / node.heat_capacity,
                1e-3 * std::abs(node.heat_flow(before)) / node.heat_capacity);
    EXPECT_LT(head(10), head(20));
    engine.cooling.temperature_before = 540;
    EXPECT_GT(head(10), head(20));
}

// Half of the cooling air from under the bodywork is half as much warmer.
TEST(Head, IsCooledByAirFromUnderTheBodywork) {
    Cylinder engine = open_engine();
    Intake intake = known_point(engine, 500);
    intake.under_hood_temperature = intake.ambient_temperature + 40;
    const double outside = engine.temperatures(intake, {}).head;
    engine.cooling.warm_air_share = 0.5;
    const double half = engine.temperatures(intake, {}).head;
    intake.under_hood_temperature = intake.ambient_temperature;
    EXPECT_NEAR(engine.temperatures(intake, {}).head, outside, 1e-9);
    // T_a by 20 K, of which 1/(1 + Y) arrives, and the thinner air.
    EXPECT_GT(half, outside + 10);
    EXPECT_LT(half, outside + 25);
}

TEST(Head, HeldFromOutsideIsHeld) {
    Cylinder engine = open_engine();
    engine.oil.temperature = 350;
    const Temperatures now = engine.temperatures(with_head(intake_at(500, 160e3, 360), 450), {});
    EXPECT_EQ(now.head, 450);
    EXPECT_EQ(now.oil, 350);
}

// Per kelvin of the head: 0.2/((1 - 0.2) T_i + 0.2 T_h) of the charge, and a tenth of an octane.
TEST(Head, HotterTakesAirAndOctane) {
    const Cylinder engine = open_engine();
    const Intake cool = with_head(intake_at(500, 140e3, 340), 453.15);
    const Intake hot = with_head(cool, 493.15);
    const double share = engine.gas_demand(hot, {}) / engine.gas_demand(cool, {});
    EXPECT_NEAR(share, (0.8 * 340 + 0.2 * 453.15) / (0.8 * 340 + 0.2 * 493.15), 1e-12);
    media::Fuel fuel;
    fuel.research_octane = fuel.motor_octane = 130;
    EXPECT_NEAR(
        engine.choose_spark(hot, fuel).requirement - engine.choose_spark(cool, fuel).requirement, 4,
        1e-9);
}

TEST(Oil, ThickensFrictionWhereItIsCold) {
    Cylinder engine = open_engine();
    const Intake intake = known_point(engine, 500);
    engine.oil.temperature = 373.15;
    const Work hot = engine.work(intake, {}, 0);
    engine.oil.temperature = 313.15;
    const Work cold = engine.work(intake, {}, 0);
    const double thick = std::pow(oil_viscosity_ratio(313.15, 373.15), 0.30);
    EXPECT_NEAR((cold.rubbing_mean_pressure - 0.17 * (101325 - 101325)) / hot.rubbing_mean_pressure,
                thick, 1e-9);
    EXPECT_GT(thick, 1.5);
    EXPECT_EQ(cold.indicated, hot.indicated);
}

TEST(Oil, IsHotterTheMoreHeatAndTheLessAir) {
    Cylinder engine = open_engine();
    const Intake usual = known_point(engine, 500);
    Intake more = usual;
    more.charge.dry_air *= 1.5;
    EXPECT_GT(engine.temperatures(more, {}).oil, engine.temperatures(usual, {}).oil + 3);
    engine.cooling.by = CoolingBy::ram_air;
    Intake slow = usual;
    slow.road_speed /= 2;
    EXPECT_GT(engine.temperatures(slow, {}).oil, engine.temperatures(usual, {}).oil + 20);
}

}  // namespace
// At full power the way out keeps what is stated of it; a small charge loses more there, and at one
// flow a slow engine, whose cylinders are fuller, loses less.
TEST(WayOut, KeepsWhatIsStatedAtFullPower) {
    const Walls walls;
    const auto behind = [&](double flow, double speed) {
        return walls.behind_port(1400, 450, {flow, 0.02, speed, 500, 0.5e-3});
    };
    EXPECT_NEAR(behind(0.02, 500), 450 + walls.port_keeps * 950, 1e-9);
    EXPECT_LT(behind(0.001, 130), behind(0.005, 500) - 50);
    EXPECT_GT(behind(0.001, 130), behind(0.001, 260));
    EXPECT_NEAR(behind(1e-6, 500), 450, 1e-6);
}

}  // namespace windwall::engine
