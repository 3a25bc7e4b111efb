// The whole engine against what others published about engines.

#include "windwall/media/power_correction.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

/// With the head at the temperature that the filling refers to.
Intake held_at(double engine_speed, double pressure, double temperature, double ambient_pressure) {
    return with_head(intake_at(engine_speed, pressure, temperature, ambient_pressure), 473.15);
}

Cylinder open_engine() {
    Cylinder engine = single_499();
    engine.exhaust.back_pressure = 0;
    engine.oil.temperature = 373.15;
    return engine;
}

// NACA TR 46: at one temperature indicated power is proportional to density, and friction does not
// change with altitude.
TEST(Outside, IndicatedPowerGoesWithDensityAndFrictionDoesNot) {
    const Cylinder engine = open_engine();
    const Work low = best_work(engine, held_at(500, 100e3, 288, 100e3));
    for (const double pressure : {90e3, 75e3, 60e3}) {
        const Work high = best_work(engine, held_at(500, pressure, 288, pressure));
        EXPECT_NEAR(high.indicated / low.indicated, pressure / 100e3, 1e-9);
        EXPECT_NEAR(high.rubbing / low.rubbing, 1, 1e-12);
    }
}

// Open Scilab textbook companion 443, example 19.1: 3.0 L at 3600 rpm, blown to 1.6 bar against an
// exhaust at 1 bar: the charge drives the pistons with 5.40 kW.
TEST(Outside, ChargeDrivesThePistonsAsInTheTextbook) {
    Cylinder engine = open_engine();
    engine.cylinders = 4;
    engine.bore = 0.1;
    engine.stroke = 3.0e-3 / (std::numbers::pi * 0.1 * 0.1);
    engine.valves.flow_loss = 0;
    const Work work = best_work(engine, held_at(3600 * rpm, 160e3, 355.99, 100e3));
    EXPECT_NEAR(engine.swept_volume(), 3.0e-3, 1e-12);
    EXPECT_NEAR(work.pumping, -5.40e3, 1e-6);
}

// The same example: the blown engine takes 7.281 m3/min of free air (1 bar, 300 K) where it fills
// its whole volume. Peak efficiency 1 at that speed and temperature must give no more and no less,
// apart from the ideal-cycle term, which the example leaves out.
TEST(Outside, BlownFlowOfTheTextbook) {
    Cylinder engine = open_engine();
    engine.cylinders = 4;
    engine.bore = 0.1;
    engine.stroke = 3.0e-3 / (std::numbers::pi * 0.1 * 0.1);
    engine.valves.flow_coefficient = 3;  // valves that never choke
    engine.breathing.peak_efficiency = 1;
    engine.breathing.best_speed = 3600 * rpm;
    engine.breathing.reference_temperature = 355.99;
    const Intake intake = held_at(3600 * rpm, 160e3, 355.99, 100e3);
    const double flow =
        engine.gas_demand(intake, {}) / ideal_volumetric_efficiency(9, 1 / 1.6, 1.3);
    EXPECT_NEAR(flow * media::dry_air().R * 300 / 1e5 * 60, 7.281, 5e-4);
}

// SAE J1349, 1990 form, assumes a mechanical efficiency of 0.85; this engine's is near. The model
// may differ from its factor by what the difference in friction is worth.
TEST(Outside, BrakePowerOnOtherDaysFollowsJ1349) {
    const Cylinder engine = open_engine();
    const double standard = best_work(engine, held_at(450, 99e3, 298.15, 99e3)).power();
    for (const auto& [pressure, celsius] : {std::pair{95e3, 35.0}, {85e3, 15.0}, {101.3e3, 15.0}}) {
        const double T = celsius + 273.15;
        const double observed = best_work(engine, held_at(450, pressure, T, pressure)).power();
        EXPECT_NEAR(observed * media::j1349_factor(pressure, T) / standard, 1, 0.01);
    }
}

// Gagg and Farrar, as commonly quoted and not read there: P/P0 = s - (1 - s)/7.55. They count
// cold air in full and SAE J1349, like this model, by its root: 3.5 points apart at 4000 m.
TEST(Outside, PowerLossWithDensityLikeGaggAndFarrar) {
    const Cylinder engine = open_engine();
    const double ground = best_work(engine, held_at(450, 101325, 288.15, 101325)).power();
    // ISO 2533 at 2000 m and 4000 m.
    for (const auto& [pressure, T, density] :
         {std::tuple{79495.0, 275.15, 1.00649}, {61640.0, 262.15, 0.81913}}) {
        const double share = density / 1.225;
        const double power = best_work(engine, held_at(450, pressure, T, pressure)).power();
        EXPECT_NEAR(power / ground, share - (1 - share) / 7.55, 0.04);
    }
}

// Full-load balances of spark-ignition engines leave a third and more of the fuel to the exhaust;
// what is left here by difference, over exhaust gas of 1.25 kJ/(kg K), must be as hot as exhaust
// is, 550 to 1050 degC (common practice).
TEST(Outside, WhatIsLeftForTheExhaustIsAsHotAsExhaust) {
    Cylinder engine = single_499();
    for (const double lambda : {0.80, 0.88, 1.0}) {
        engine.lambda = lambda;
        const Intake intake = settled(engine, intake_at(5000 * rpm, 99e3, 298.15), {});
        const Work work = engine.work(intake, {}, 0);
        const Heat heat = engine::heat(work, engine.exhaust_gas(intake, {}, work));
        const double left = work.fuel_power - work.indicated - heat.walls - heat.unburnt;
        const double rise = left / ((intake.charge.dry_air + work.fuel_flow) * 1250);
        EXPECT_GT(rise + 25, 550) << lambda;
        EXPECT_LT(rise + 25, 1050) << lambda;
    }
}

/// A four of 2.0 L as cars have it.
Cylinder car_engine() {
    Cylinder engine = single_499();
    engine.cylinders = 4;
    engine.bore = engine.stroke = 0.086;
    engine.compression_ratio = 10;
    engine.rev_limit = 6500 * rpm;
    engine.lambda = 1;
    return engine;
}

// Energy balance of a passenger car's engine (FEV, printed at x-engineer.org): mechanical friction
// takes 3 % of the fuel at full load, where the brake gets 29 %, and 9 % at a part load where it
// gets 20 % and gas exchange 7 %. Speeds are not printed; 3000 and 2000 rpm are taken. Ours
// takes 4.4 and 13 %, half as much again as that engine: it is not too little for one with rolling
// bearings.
TEST(Outside, FrictionTakesNoLessThanAPublishedEnergyBalance) {
    const Cylinder engine = car_engine();
    const Work full = engine.work(settled(engine, intake_at(3000 * rpm, 99e3, 298.15), {}), {}, 0);
    EXPECT_GT((full.rubbing + full.accessories) / full.fuel_power, 0.03);
    EXPECT_LT((full.rubbing + full.accessories) / full.fuel_power, 0.05);
    double pressure = 99e3;
    Work part = full;
    while (part.power() / part.fuel_power > 0.20) {
        pressure -= 100;
        part = engine.work(settled(engine, intake_at(2000 * rpm, pressure, 298.15), {}), {}, 0);
    }
    EXPECT_GT((part.rubbing + part.accessories) / part.fuel_power, 0.09);
    EXPECT_LT((part.rubbing + part.accessories) / part.fuel_power, 0.15);
    EXPECT_NEAR(part.pumping / part.fuel_power, 0.07, 0.025);
}

// A single of 148 cm3 with side valves, motored unfired with all it has, pumping and fan included
// (teaching laboratory, record published with its script): 149 to 163 kPa from 1517 to 2805 rpm,
// and hardly rising. Bearings and fan of it are not known. Ours has no fan and takes about half:
// small engines and their auxiliaries cost more than the line that rubbing follows, so this is a
// lower bound, and the friction of such an engine wants a scale.
TEST(Outside, AMotoredSmallSingleTakesMoreThanOurLine) {
    Cylinder engine = single_499();
    engine.bore = 0.064;
    engine.stroke = 0.046;
    engine.compression_ratio = 7.1;
    engine.rev_limit = 3600 * rpm;
    for (const auto& [speed, measured] :
         {std::pair{1517.0, 149e3}, {2114.0, 160e3}, {2514.0, 163e3}, {2805.0, 152e3}}) {
        const Work work = best_work(engine, held_at(speed * rpm, 86.7e3, 293.15, 86.7e3));
        const double ours = work.rubbing_mean_pressure + work.pumping_mean_pressure;
        EXPECT_GT(ours, 0.4 * measured) << speed;
        EXPECT_LT(ours, measured) << speed;
    }
}

}  // namespace
}  // namespace windwall::engine
