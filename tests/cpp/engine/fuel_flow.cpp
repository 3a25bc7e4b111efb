// Own fuel, injected fuel and injectors.

#include "windwall/engine/own_fuel.hpp"
#include "windwall/media/liquids.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

using media::Vapour;

media::Stream charge_with(double methanol, double water = 0) {
    media::Stream charge = media::ambient_stream(100e3, 300, water, 0.025);
    charge.vapour[media::index(Vapour::methanol)] = methanol / 2;
    charge.liquid[media::index(Vapour::methanol)] = methanol / 2;
    charge.gas = media::gas_phase(charge.vapour);
    return charge;
}

// 25 g/s of dry air at lambda 0.85 need 2.0140 g/s of petrol; with 0.2015 g/s of methanol 1.9246.
// Second computation of the same formula.
TEST(Mixture, MethanolReplacesPetrolWhereTheFuelIsTrimmed) {
    const double petrol = 0.025 * mix(charge_with(0), {}, 0.85, true).own_fuel;
    EXPECT_NEAR(petrol, 2.0140e-3, 5e-8);
    const Mixture mixture = mix(charge_with(0.2015e-3 / 0.025), {}, 0.85, true);
    EXPECT_NEAR(0.025 * mixture.own_fuel, 1.9246e-3, 1e-7);
    EXPECT_NEAR(0.025 * mixture.injected_fuel, 0.2015e-3, 1e-12);
    EXPECT_NEAR(mixture.lambda, 0.85, 1e-12);
}

TEST(Mixture, MethanolEnrichesWhereItIsNot) {
    const Mixture mixture = mix(charge_with(0.2015e-3 / 0.025), {}, 0.85, false);
    EXPECT_NEAR(0.025 * mixture.own_fuel, 2.0140e-3, 5e-8);
    EXPECT_NEAR(mixture.lambda, 0.8139, 5e-5);
}

TEST(Mixture, NeverTakesFuelBack) {
    const Mixture flooded = mix(charge_with(0.3), {}, 0.85, true);
    EXPECT_EQ(flooded.own_fuel, 0);
    EXPECT_NEAR(flooded.lambda, 1 / (0.3 * 6.474), 1e-12);
}

/// Of 8 g of methanol per kg of air at 0.85.
Mixture with_methanol(std::optional<double> cut, std::optional<double> trim, bool trims) {
    Intake intake;
    intake.charge = charge_with(8e-3);
    intake.fuel_cut = cut;
    intake.trim = trim;
    return mix_at(intake, {}, 0.85, trims);
}

// 8 g need 0.051792 of the 1/0.85 that all fuels burn: cut by as much, the mixture stays.
TEST(OwnFuel, IsCutByTheShareThatAPumpTakes) {
    const double air = 8e-3 * 6.474;
    const Mixture fitting = with_methanol(air * 0.85, {}, true);
    EXPECT_NEAR(fitting.lambda, 0.85, 1e-12);
    EXPECT_NEAR(fitting.own_fuel, with_methanol({}, {}, true).own_fuel, 1e-15);
    const Mixture half = with_methanol(0.5, {}, true);
    EXPECT_NEAR(half.own_fuel, 0.5 / 0.85 / 14.604, 1e-12);
    EXPECT_NEAR(half.lambda, 1 / (0.5 / 0.85 + air), 1e-12);
    EXPECT_EQ(with_methanol(0.5, {}, false).lambda, half.lambda);
    // While the pump rests its engine does not trim either.
    EXPECT_EQ(with_methanol(0, {}, true).lambda, with_methanol({}, {}, false).lambda);
    EXPECT_EQ(with_methanol(1, {}, true).own_fuel, 0);
}

TEST(OwnFuel, IsTrimmedForWhatItHasBeenTrimmedForYet) {
    const double air = air_for_injected(charge_with(8e-3));
    EXPECT_NEAR(air, 8e-3 * 6.474, 1e-12);
    EXPECT_EQ(with_methanol({}, 0, true).lambda, with_methanol({}, {}, false).lambda);
    EXPECT_EQ(with_methanol({}, air, true).lambda, with_methanol({}, {}, true).lambda);
    const Mixture between = with_methanol({}, air / 2, true);
    EXPECT_NEAR(between.lambda, 1 / (1 / 0.85 + air / 2), 1e-12);
    EXPECT_EQ(with_methanol({}, air / 2, false).lambda, with_methanol({}, {}, false).lambda);
    EXPECT_NEAR(trim_rate(air / 2, air, 0.25), air * 2, 1e-15);
    EXPECT_EQ(trim_rate(air, air, 0.25), 0);
}

TEST(Mixture, WaterBringsNoHeat) {
    EXPECT_EQ(mix(charge_with(0, 0.05), {}, 0.9, true).heating,
              mix(charge_with(0), {}, 0.9, true).heating);
}

// Equal air and lambda: methanol brings 3.6 % more energy per air than petrol.
TEST(Mixture, HeatingIsTheSumOverTheFuels) {
    const Mixture mixture = mix(charge_with(0.01), {}, 0.9, true);
    EXPECT_NEAR(mixture.heating, 0.01 * 19.936e6 + (1 / 0.9 - 0.01 * 6.474) / 14.604 * 43.4e6, 1);
}

TEST(Work, FuelPowerCountsInjectedFuelOnce) {
    const Cylinder engine = single_499();
    Intake intake = intake_at(450, 100e3, 300);
    intake.charge = charge_with(0.02);
    const Work work = engine.work(intake, {}, 0);
    EXPECT_NEAR(work.fuel_power, work.fuel_flow * 43.4e6 + work.injected_fuel_flow * 19.936e6,
                1e-3);
    EXPECT_NEAR(work.indicated, work.indicated_efficiency * work.fuel_power, 1e-9);
}

TEST(Work, PowersAndMeanPressuresAgree) {
    Cylinder engine = single_499();
    engine.accessories.torque = 0.5;
    engine.accessories.fan_torque = 0.8;
    engine.accessories.fan_speed = 300;
    const Intake intake = settled(engine, intake_at(450, 130e3, 330), {});
    const Work work = engine.work(intake, {}, 0.1);
    const double cycles = 450 / (4 * std::numbers::pi) * engine.swept_volume();
    EXPECT_NEAR(work.rubbing, cycles * work.rubbing_mean_pressure, 1e-9);
    EXPECT_NEAR(work.pumping, cycles * work.pumping_mean_pressure, 1e-9);
    EXPECT_NEAR(work.accessories, 450 * (0.5 + 0.8 * 1.5 * 1.5), 1e-9);
    EXPECT_NEAR(work.power(), cycles * work.brake_mean_pressure, 1e-9);
    EXPECT_NEAR(work.torque() * 450, work.power(), 1e-9);
    EXPECT_NEAR(work.power(), work.indicated - work.rubbing - work.pumping - work.accessories,
                1e-9);
}

// p_e - p_i and the valves of both sides, each with its own diameter and density: 4.12 s Sp^2/d^4.
TEST(Work, PumpingIsThePressuresAndBothValves) {
    Cylinder engine = single_499();
    engine.valves.flow_loss = 0.8;
    const Intake intake = settled(engine, intake_at(450, 130e3, 330), {});
    const double speed = 0.084 * 450 / std::numbers::pi;
    const double exhaust = engine.exhaust_pressure(intake, {});
    const double flow = 4.12 * speed * speed;
    const double valves = intake.charge.density() / 1.184 * flow / std::pow(0.52, 4) +
                          exhaust / 101325 * flow / std::pow(0.44, 4);
    EXPECT_GT(exhaust, 99e3 + 1e3);
    EXPECT_NEAR(engine.work(intake, {}, 0).pumping_mean_pressure, exhaust - 130e3 + 0.8 * valves,
                1e-6);
}

TEST(Injection, NoneWithoutInjectors) {
    const Cylinder engine = single_499();
    const Intake intake = intake_at(450, 100e3, 300);
    EXPECT_FALSE(engine.injection(intake, {}, engine.work(intake, {}, 0)));
}

TEST(Injection, RailFollowsTheManifoldOnlyWhereReferenced) {
    Injector injector;
    injector.rated_flow = 440e-6 / 60;
    injector.rail_pressure = 400e3;
    EXPECT_EQ(injector.inject(2e-3, 600, 745, 160e3, 100e3, 1).pressure_drop, 400e3);
    injector.referenced = false;
    const Injection fixed = injector.inject(2e-3, 600, 745, 160e3, 100e3, 1);
    EXPECT_DOUBLE_EQ(fixed.pressure_drop, 340e3);
    EXPECT_GT(fixed.duty, 0);
}

TEST(Injection, SaysWhenItIsTooSmall) {
    Cylinder engine = single_499();
    engine.injector = Injector{};
    const Intake intake = settled(engine, intake_at(6500 * rpm, 160e3, 320), {});
    const Work work = engine.work(intake, {}, 0);
    engine.injector->rated_flow = 300e-6 / 60;
    EXPECT_TRUE(engine.injection(intake, {}, work)->over_rated);
    engine.injector->count = 2;
    EXPECT_FALSE(engine.injection(intake, {}, work)->over_rated);
}

// An engine of two cylinders with one injector each shares the fuel.
TEST(Injection, OneInjectorACylinderUnlessStated) {
    Injector injector;
    injector.rated_flow = 5e-6;
    const Injection two = injector.inject(2e-3, 500, 745, 1e5, 1e5, 2);
    const Injection one = injector.inject(1e-3, 500, 745, 1e5, 1e5, 1);
    EXPECT_DOUBLE_EQ(two.pulse_width, one.pulse_width);
}

}  // namespace
}  // namespace windwall::engine
