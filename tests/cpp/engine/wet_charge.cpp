// Water, alcohol and fuel that arrive with the charge.

#include "windwall/media/liquids.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "engines.hpp"

namespace windwall::engine {
namespace {

using media::index;
using media::Vapour;

Intake dry(double pressure = 150e3) {
    Intake intake = intake_at(400, pressure, 330);
    intake.charge.dry_air = 0.02;
    return intake;
}

Intake with_drops(Vapour vapour, double share, double pressure = 150e3) {
    Intake intake = dry(pressure);
    intake.charge.liquid[index(vapour)] = share;
    return intake;
}

/// What a carburettor set for this engine leaves in the charge, a part of it as vapour.
Intake carburetted(const Cylinder& engine, const media::Fuel& fuel, double evaporated) {
    Intake intake = dry();
    const auto demand = engine.fuel_demand(fuel);
    for (std::size_t i = 0; i < demand.size(); ++i) {
        intake.charge.vapour[i] += evaporated * demand[i];
        intake.charge.liquid[i] += (1 - evaporated) * demand[i];
    }
    intake.charge.gas = media::gas_phase(intake.charge.vapour);
    intake.carburetted = true;
    return intake;
}

media::Fuel m15() {
    media::Fuel fuel;
    fuel.ethanol = 0.05;
    fuel.methanol = 0.15;
    return fuel;
}

TEST(Carburetted, TheDemandIsWhatLambdaAsksFor) {
    const Cylinder engine = single_499();
    for (const media::Fuel& fuel : {media::Fuel{}, m15()}) {
        const auto demand = engine.fuel_demand(fuel);
        double sum = 0, air = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            sum += demand[i];
            air += demand[i] * media::liquids[i].stoichiometric_ratio;
        }
        EXPECT_NEAR(air, 1 / engine.lambda, 1e-12);
        EXPECT_NEAR(sum, engine.mixture(dry(), fuel).own_fuel, 1e-15);
    }
}

TEST(Carburetted, TheChargeBringsTheFuelAndTheEngineAddsNone) {
    const Cylinder engine = single_499();
    for (const double evaporated : {0.0, 0.4, 1.0}) {
        const Intake intake = carburetted(engine, m15(), evaporated);
        const Mixture mixture = engine.mixture(intake, m15());
        EXPECT_EQ(mixture.own_fuel, 0);
        EXPECT_NEAR(mixture.lambda, engine.lambda, 1e-12);
        EXPECT_NEAR(mixture.tank_fuel, engine.mixture(dry(), m15()).own_fuel, 1e-15);
        EXPECT_NEAR(mixture.heating, engine.mixture(dry(), m15()).heating, 1e-6);
        const Work work = engine.work(intake, m15(), 0);
        EXPECT_EQ(work.fuel_flow, 0);
        EXPECT_NEAR(work.injected_fuel_flow, 0.02 * mixture.tank_fuel, 1e-15);
    }
}

TEST(Carburetted, LambdaIsWhateverTheStreamCarries) {
    const Cylinder engine = single_499();
    Intake intake = carburetted(engine, {}, 0.5);
    intake.charge.liquid[index(Vapour::petrol)] += 0.01;
    intake.charge.liquid[index(Vapour::methanol)] += 0.01;
    const Mixture mixture = engine.mixture(intake, {});
    EXPECT_NEAR(1 / mixture.lambda, 1 / engine.lambda + 0.01 * 14.604 + 0.01 * 6.474, 1e-12);
    EXPECT_NEAR(mixture.sprayed[1], 0.01, 1e-15);
    intake.charge = dry().charge;  // a dry charge: nothing burns, and every number stays finite
    EXPECT_EQ(engine.work(intake, {}, 0).indicated, 0);
    EXPECT_TRUE(std::isfinite(engine.choose_spark(intake, {}).margin));
    EXPECT_FALSE(engine.validity(intake, {}, 0).mixture);
}

// All of the tank's fuel is in the gas when it burns, however little had evaporated on the way.
TEST(Carburetted, TheEndGasHoldsAllTheFuel) {
    const Cylinder engine = single_499();
    auto all = engine.fuel_demand(m15());
    all[0] += dry().charge.vapour[0];
    for (const double evaporated : {0.0, 0.3, 1.0}) {
        const EndGas gas = engine.end_gas(carburetted(engine, m15(), evaporated), m15(), 0);
        EXPECT_NEAR(gas.gas_constant, media::gas_phase(all).R, 1e-9);
    }
}

// What was drawn in fills the cylinder at bottom dead centre together with the burned gas that
// stayed, which is a few to fifteen per cent of all.
TEST(EndGas, FillsTheCylinderAtBottomDeadCentre) {
    const Cylinder engine = single_499();
    const Intake intake = dry();
    const EndGas gas = engine.end_gas(intake, {}, 0);
    const double drawn = engine.volumetric_efficiency(intake, {});  // of the swept volume
    const double all = gas.pressure / 150e3 * 330 / gas.temperature * 9 / 8;
    EXPECT_LT(drawn / all, 0.99);
    EXPECT_GT(drawn / all, 0.85);
}

// Known to six tenths of the fuel by mass, whichever way the fuel comes.
TEST(Validity, HoldsWaterToAllTheFuelThereIs) {
    const Cylinder engine = single_499();
    for (Intake intake : {dry(), carburetted(engine, {}, 0.5)}) {
        const Mixture burnt = engine.mixture(intake, {});
        const double fuel = burnt.own_fuel + burnt.injected_fuel;
        EXPECT_NEAR(fuel, 1.15 / 14.604, 1e-6);
        for (const double share : {0.55, 0.65}) {
            intake.charge.liquid[index(Vapour::water)] = share * fuel;
            EXPECT_EQ(engine.validity(intake, {}, 0).water, share < 0.6);
        }
    }
}

TEST(Carburetted, StatedPropertiesHoldForTheFuelThatCameWithTheCharge) {
    media::Fuel fuel;
    fuel.stated_heating_value = 42e6;
    fuel.stated_stoichiometric_ratio = 14.2;
    const Cylinder engine = single_499();
    const Mixture mixture = engine.mixture(carburetted(engine, fuel, 0.5), fuel);
    EXPECT_NEAR(mixture.lambda, engine.lambda, 1e-12);
    EXPECT_NEAR(mixture.heating, 42e6 / (14.2 * engine.lambda), 1e-6);
}

// Latent heat over the heat capacity of air, fuel and vapour: 0.0545 kg of water per kg of air with
// phi 1.2 of petrol cools by 82 K where all of it evaporates from the gas. A second computation.
TEST(Drops, CoolByTheirLatentHeat) {
    EXPECT_NEAR(evaporative_cooling(0.5 * 1.2 / 14.7, 2442e3, 1880, 1.2 / 14.7 * 1700), 81.6, 0.1);
    EXPECT_NEAR(evaporative_cooling(1 / 14.7, 349e3, 1700, 0), 21, 0.3);
    const Intake intake = with_drops(Vapour::water, 0.5 * 1.2 / 14.7);
    const AtValve drops = at_valve({}, intake.charge, {});
    EXPECT_LT(evaporate(intake.charge, drops, 1).cooling, 0.2 * 330 + 1e-9);
    EXPECT_NEAR(evaporate(intake.charge, drops, 0.3).cooling, 0.3 * 81.6 * 1.07, 2);
}

// What a liquid does hangs on where it evaporates and on nothing else.
TEST(AtValve, EveryLiquidIsInOneAccountWhereverItEnters) {
    media::Stream charge = with_drops(Vapour::methanol, 0.04).charge;
    charge.film_share = 0.35;
    const Evaporation usual;
    const AtValve found = at_valve(usual, charge, {0, 0.1, 0, 0.02});
    EXPECT_NEAR(found.early[1], 0.05 * 0.1, 1e-15);
    EXPECT_NEAR(found.metal[1], 0.35 * 0.04 + 0.85 * 0.95 * 0.1, 1e-15);
    EXPECT_NEAR(found.metal[3], 0.85 * 0.95 * 0.02, 1e-15);
    for (const std::size_t i : {1U, 3U}) {
        const double all = i == 1 ? 0.14 : 0.02;
        EXPECT_NEAR(found.early[i] + found.metal[i] + found.flying[i], all, 1e-15);
    }
    // Injected at the port to fly and to land as from a carburettor, it is the same.
    Evaporation as_carburetted;
    as_carburetted.port_vapour = 0;
    as_carburetted.port_film = 0.35;
    const media::Stream air = dry().charge;
    const Evaporated ported = evaporate(air, at_valve(as_carburetted, air, {0, 0.04, 0, 0}), 0.8);
    const Evaporated carried = evaporate(charge, at_valve(usual, charge, {}), 0.8);
    EXPECT_NEAR(ported.cooling, carried.cooling, 1e-12);
    EXPECT_NEAR(ported.displaced, carried.displaced, 1e-15);
}

TEST(AtValve, OrdersFillingByWhereItEvaporates) {
    const auto filled = [](double port_vapour, double port_film) {
        Cylinder engine = single_499();
        engine.evaporation.port_vapour = port_vapour;
        engine.evaporation.port_film = port_film;
        engine.evaporation.before_closing = 0.7;
        media::Fuel methanol;
        methanol.methanol = 1;
        return engine.volumetric_efficiency(dry(), methanol);
    };
    EXPECT_GT(filled(0, 0), filled(0, 0.5));  // in the cylinder, half there, on metal
    EXPECT_GT(filled(0, 0.5), filled(0, 1));
}

TEST(AtValve, PetrolAtThePortIsWhatFillingAndAnchorKnow) {
    const Cylinder engine = single_499();
    const Intake intake = dry();
    const Mixture burnt = engine.mixture(intake, {});
    const AtValve here = at_valve({}, intake.charge, burnt.port);
    EXPECT_NEAR(here.flying[3], petrol_at_port(burnt.equivalence_ratio()).flying[3], 1e-15);
    media::Fuel methanol;
    methanol.methanol = 1;
    EXPECT_LT(engine.end_gas(intake, methanol, 0).temperature,
              engine.end_gas(intake, {}, 0).temperature - 8);
}

// Colder gas before the intake closes lets more in: the root of the temperatures, less the room
// that the vapour takes.
TEST(Drops, EvaporatingBeforeClosingMakeRoom) {
    Cylinder engine = single_499();
    engine.exhaust.back_pressure = 0;
    const Intake wet = with_head(with_drops(Vapour::water, 0.02), 473.15);
    const Intake damp = with_head(dry(), 473.15);
    const double ratio = engine.gas_demand(wet, {}) / engine.gas_demand(damp, {});
    const auto filled = [&](const Intake& intake) {
        const Evaporated drops = evaporate(
            intake.charge, at_valve({}, intake.charge, engine.mixture(intake, {}).port), 0.3);
        return std::sqrt(330 / (330 - drops.cooling)) / (1 + drops.displaced);
    };
    EXPECT_NEAR(ratio, filled(wet) / filled(damp), 1e-12);
    EXPECT_NEAR(
        filled(wet) / filled(damp),
        std::sqrt(330 / (330 - 0.3 * 0.02 * 2442e3 / 1170)) / (1 + 0.006 * 28.9654 / 18.01528),
        1e-3);
    EXPECT_GT(ratio, 1.005);
    engine.evaporation.before_closing = 0;
    EXPECT_NEAR(engine.gas_demand(wet, {}), engine.gas_demand(damp, {}),
                2e-4 * engine.gas_demand(damp, {}));  // heat of the drops themselves
}

// Every liquid helps, and more of it more.
TEST(Drops, LowerTheRequirement) {
    const Cylinder engine = single_499();
    media::Fuel fuel;
    fuel.research_octane = fuel.motor_octane = 150;  // no retard
    for (const Vapour liquid : {Vapour::water, Vapour::methanol, Vapour::ethanol}) {
        double before = engine.choose_spark(dry(), fuel).requirement;
        for (const double share : {0.01, 0.02, 0.04}) {
            const double now = engine.choose_spark(with_drops(liquid, share), fuel).requirement;
            EXPECT_LT(now, before) << static_cast<int>(liquid);
            before = now;
        }
    }
}

// Water that arrives as vapour damps by 3.9 per 10 g/kg, less where there is more, and cools
// nothing here; as drops it does both.
TEST(Drops, OfWaterDampAndCool) {
    Cylinder engine = single_499();
    engine.exhaust.back_pressure = 0;
    media::Fuel fuel;
    fuel.research_octane = fuel.motor_octane = 150;
    const double none = engine.choose_spark(with_head(dry(), 453.15), fuel).requirement;
    Intake damp = with_head(dry(), 453.15);
    damp.charge.vapour[0] = 0.01;
    EXPECT_NEAR(engine.choose_spark(damp, fuel).requirement - none, -3.9 / 1.25, 1e-9);
    const Intake wet = with_head(with_drops(Vapour::water, 0.01), 453.15);
    const auto cooled = [&](const Intake& intake) {
        const AtValve liquid = at_valve({}, intake.charge, engine.mixture(intake, fuel).port);
        const double early = evaporate(intake.charge, liquid, 0.3).cooling;
        return early + 0.7 * (evaporate(intake.charge, liquid, 0.8).cooling - early);
    };
    const double colder = cooled(wet) - cooled(with_head(dry(), 453.15));
    EXPECT_NEAR(colder, 13, 2);
    EXPECT_NEAR(engine.choose_spark(wet, fuel).requirement - none, -3.12 / 1.2 - colder / 7, 1e-9);
}

// The octane of an alcohol and what it cools are counted once each: with its motor number, of a
// heated mixture, where its cooling is in the charge.
TEST(Octane, OfInjectedAlcoholIsItsMotorNumber) {
    media::Fuel fuel;
    fuel.research_octane = fuel.motor_octane = 80;
    const Mixture mixture = mix(with_drops(Vapour::methanol, 0.02).charge, fuel, 0.88, true);
    const double petrol = mixture.own_fuel / 105.97e-3, methanol = 0.02 / 32.04186e-3;
    const double x = methanol / (methanol + petrol);
    EXPECT_NEAR(octane_index(mixture, fuel, 0.5, 0), 80 + x * (89 - 80), 1e-9);
    fuel.research_octane = fuel.motor_octane = 100;  // never against the fuel in the tank
    EXPECT_EQ(octane_index(mixture, fuel, 0.5, 0), 100);
}

TEST(Octane, AlcoholCountsWithItsMotorNumberAsFarAsItCoolsTheGas) {
    const Cylinder engine = single_499();
    media::Fuel e85;
    e85.ethanol = 0.85;
    e85.research_octane = 107;
    e85.motor_octane = 90;
    const double x = e85.alcohol_molar_share();
    EXPECT_GT(x, 0.9);
    const auto index = [&](double from_gas) { return 107 - (0.5 + 0.5 * x * from_gas) * 17; };
    EXPECT_NEAR(engine.choose_spark(carburetted(engine, e85, 0.5), e85).fuel_index,
                index(0.5 + 0.5 * 0.8), 1e-9);
    const double at_port = 0.05 + 0.95 * 0.15 * 0.8;
    EXPECT_NEAR(engine.choose_spark(dry(), e85).fuel_index, index(at_port), 1e-9);
    const media::Fuel petrol;  // evaporation of petrol is in anchor and rating alike
    EXPECT_NEAR(engine.choose_spark(carburetted(engine, petrol, 0.5), petrol).fuel_index, 90, 1e-9);
}

}  // namespace
}  // namespace windwall::engine
