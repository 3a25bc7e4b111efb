// Which way things must move, derived from the formulas.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "engines.hpp"

namespace windwall::engine {
namespace {

constexpr double speeds[] = {150, 300, 450, 700};
constexpr double pressures[] = {40e3, 80e3, 100e3, 140e3, 190e3};
constexpr double temperatures[] = {260, 300, 350, 420};

template <class Check>
void everywhere(Check&& check) {
    for (const double speed : speeds)
        for (const double pressure : pressures)
            for (const double temperature : temperatures)
                check(intake_at(speed, pressure, temperature, 99e3, 0.008));
}

media::Fuel petrol(double octane) {
    media::Fuel fuel;
    fuel.research_octane = octane;
    fuel.motor_octane = octane;
    return fuel;
}

double requirement_at(const Cylinder& engine, const Intake& intake, double retard = 0) {
    Cylinder given = engine;
    given.spark.policy = SparkPolicy::as_given;
    given.spark.table.column = {{0, 2000}, {retard, retard}};
    return given.choose_spark(intake, petrol(95)).requirement;
}

// Held: margin = index - requirement + retard, retard = clamp(wanted - index + requirement): its
// slope over the index is 1 - 1 or 1 - 0, never negative.
TEST(Signs, MoreOctaneNeverLessMargin) {
    everywhere([](const Intake& intake) {
        double before = -1e9;
        for (double octane = 70; octane <= 120; octane += 2.5) {
            const Spark spark = single_499().choose_spark(intake, petrol(octane));
            EXPECT_GE(spark.margin, before - 1e-9);
            before = spark.margin;
        }
    });
}

// d(requirement)/dT = 1/7 at fixed pressure. The drawn flow falls with sqrt(T), and the exhaust
// pressure with its square: -dp_e/(30 kPa T), smaller by two orders.
TEST(Signs, HotterChargeNeverMoreMargin) {
    const Cylinder engine = single_499();
    everywhere([&](Intake intake) {
        double before = -1e9;
        for (double T = 240; T <= 600; T += 30) {
            intake.charge.temperature = T;
            const double needed = requirement_at(engine, settled(engine, intake, {}));
            EXPECT_GT(needed, before);
            before = needed;
        }
    });
}

// The fuel's index is research less K times sensitivity, with this engine's K.
TEST(Signs, MarginUsesTheEnginesWeightOfSensitivity) {
    Cylinder engine = single_499();
    const Intake intake = intake_at(450, 100e3, 300);
    for (const double weight : {0.0, 0.5, 1.0}) {
        engine.octane_sensitivity_weight = weight;
        EXPECT_DOUBLE_EQ(engine.choose_spark(intake, {}).fuel_index, 95 - weight * 10);
    }
}

// Injected fuel that is not trimmed away enriches, and rich mixtures need less.
TEST(Signs, RequirementSeesTheMixtureThatBurns) {
    Cylinder engine = single_499();
    engine.combustion.trims_for_injected_fuel = false;
    engine.evaporation.before_knock = engine.evaporation.before_closing = 0;  // the mixture alone
    Intake intake = with_head(intake_at(450, 100e3, 300), 453.15);
    const double before = requirement_at(engine, intake);
    intake.charge.liquid[1] = 0.02;
    const double lambda = 1 / (1.15 + 0.02 * 6.474);
    // 0.05 before every liquid was counted at the valve; what the 0.057 left are was not traced.
    EXPECT_NEAR(requirement_at(engine, intake) - before, -2 * 14.604 * (1 / 1.15 - lambda), 0.06);
}

TEST(Signs, RequirementRisesWithPressureRatioHeadAndAdvance) {
    const Cylinder engine = single_499();
    everywhere([&](const Intake& intake) {
        const double here = requirement_at(engine, intake);
        Intake denser = intake;
        denser.charge.pressure += 1e3;
        EXPECT_GT(requirement_at(engine, denser), here);
        Cylinder tighter = engine;
        tighter.compression_ratio += 0.1;
        EXPECT_GT(requirement_at(tighter, intake), here);
        const double hotter = engine.temperatures(intake, {}).head + 1;
        EXPECT_GT(requirement_at(engine, with_head(intake, hotter)), here);
        EXPECT_LT(requirement_at(engine, intake, degree), here);
        EXPECT_GT(requirement_at(engine, intake, -degree), here);
        Intake damper = intake;
        damper.charge.vapour[0] += 1e-3;
        EXPECT_LT(requirement_at(engine, damper), here);
    });
}

// Flow = e_v p V N/(R T), e_v rises with p through p_e/p_i, so flow rises faster than p; it goes
// with T^-1/2.
TEST(Signs, FlowRisesWithPressureAndFallsWithTheRootOfTemperature) {
    const Cylinder engine = single_499();
    everywhere([&](const Intake& intake) {
        const double here = engine.gas_demand(intake, {});
        Intake denser = intake;
        denser.charge.pressure *= 1.01;
        EXPECT_GT(engine.gas_demand(denser, {}), 1.01 * here);
    });
    Cylinder wide = engine;
    wide.exhaust.back_pressure = 0;    // hotter exhaust is thinner
    wide.valves.flow_coefficient = 3;  // without the Mach index, which falls with sqrt(T)
    const auto drawn = [&](double temperature) {
        const double head = wide.breathing.reference_head_temperature;
        return wide.gas_demand(with_head(intake_at(450, 100e3, temperature), head), {});
    };
    EXPECT_NEAR(drawn(363) / drawn(300), std::sqrt(300 / 363.0), 1e-12);
}

// The exhaust pressure rises with the square of the flow, and filling falls with it.
TEST(Signs, BackPressureCostsAirAndTorque) {
    Cylinder open = single_499(), silenced = single_499();
    open.exhaust.back_pressure = 2e3;
    silenced.exhaust.back_pressure = 25e3;
    everywhere([&](const Intake& intake) {
        const Intake freely = settled(open, intake, {}), hardly = settled(silenced, intake, {});
        EXPECT_LT(hardly.charge.dry_air, freely.charge.dry_air);
        EXPECT_LT(silenced.work(hardly, {}, 0).torque(), open.work(freely, {}, 0).torque());
    });
}

TEST(Signs, BestSpeedIsSevenTenthsOfTheLimitUnlessStated) {
    Cylinder engine = single_499();
    const Intake intake = intake_at(4900 * rpm, 100e3, 300);
    engine.breathing.best_speed = 4900 * rpm;
    const double stated = engine.gas_demand(intake, {});
    engine.breathing.best_speed.reset();
    EXPECT_NEAR(engine.gas_demand(intake, {}), stated, 1e-15);
}

// Two small valves of one area pass what one does: the Mach index knows the area only.
TEST(Signs, ValvesShareTheirArea) {
    Cylinder one = single_499(), two = single_499();
    two.valves.per_side = 2;
    two.valves.intake_ratio = one.valves.intake_ratio / std::sqrt(2.0);
    const Intake fast = intake_at(700, 100e3, 300);
    EXPECT_NEAR(two.gas_demand(fast, {}), one.gas_demand(fast, {}), 1e-15);
    two.valves.intake_ratio = one.valves.intake_ratio;
    EXPECT_GT(two.gas_demand(fast, {}), one.gas_demand(fast, {}));
}

// Everything that enters leaves by the exhaust: dry air, vapours, drops and the engine's own fuel,
// and the rise goes with the square of their sum.
TEST(Signs, ExhaustCarriesAllThatEntered) {
    Cylinder engine = single_499();
    engine.exhaust.back_pressure = 10e3;
    engine.exhaust.at_flow = 0.03;
    Intake intake = intake_at(450, 100e3, 300, 101325, 0.02);
    intake.charge.liquid[0] = 0.05;
    intake.charge.dry_air = 0.025;
    const double fuel = 1.15 / 14.604;
    const double share = 0.025 * (1 + 0.02 + 0.05 + fuel) / 0.03;
    const double hotter = 1100 / 1098.15;  // charge of 300 K, 800 K hotter when it leaves
    EXPECT_NEAR(engine.exhaust_pressure(intake, {}), 101325 + 10e3 * share * share * hotter, 1e-6);
    engine.exhaust.at_flow.reset();  // then that of full cylinders at the rev limit
    const double full = 1.184 * engine.swept_volume() * 7000 / 120;
    const double part = share * 0.03 / full;
    EXPECT_NEAR(engine.exhaust_pressure(intake, {}), 101325 + 10e3 * part * part * hotter, 1e-6);
}

// d(pumping)/d(p_i) = -1 + small valve losses: boost drives the pistons, vacuum is paid for.
TEST(Signs, PumpingChangesSignWithBoost) {
    const Cylinder engine = single_499();
    EXPECT_LT(best_work(engine, intake_at(300, 160e3, 330)).pumping, 0);
    EXPECT_GT(best_work(engine, intake_at(300, 50e3, 330)).pumping, 40e3 * 499e-6 * 300 / 12.6);
}

TEST(Signs, SparkOffItsBestCostsIndicatedWorkOnly) {
    const Cylinder engine = single_499();
    const Intake intake = settled(engine, intake_at(450, 140e3, 340), {});
    const Work best = engine.work(intake, {}, 0);
    double before = best.indicated;
    for (double retard = 2; retard <= 40; retard += 2) {
        const Work late = engine.work(intake, {}, retard * degree);
        EXPECT_LT(late.indicated, before);
        EXPECT_EQ(late.rubbing, best.rubbing);
        EXPECT_EQ(late.pumping, best.pumping);
        EXPECT_EQ(late.fuel_flow, best.fuel_flow);
        before = late.indicated;
    }
}

// Oxygen limits rich work: phi x efficiency is flat within 1 % from 1.0 to 1.2.
TEST(Signs, WorkPerAirIsFlatFromStoichiometricToAFifthRich) {
    Cylinder engine = single_499();
    std::vector<double> work;
    for (double phi = 1.0; phi <= 1.2; phi += 0.02) {
        engine.lambda = 1 / phi;
        const Intake intake = settled(engine, intake_at(450, 100e3, 300), {});
        work.push_back(engine.work(intake, {}, 0).indicated / intake.charge.dry_air);
    }
    const auto [least, most] = std::minmax_element(work.begin(), work.end());
    EXPECT_LT(*most / *least, 1.011);
}

// Only dry air burns: at one pressure and temperature vapour takes its place.
TEST(Signs, HumidAirGivesLessWorkThanDry) {
    const Cylinder engine = single_499();
    const double dry = best_work(engine, intake_at(450, 100e3, 308)).indicated;
    const double humid = best_work(engine, intake_at(450, 100e3, 308, 99e3, 0.015)).indicated;
    // The share of dry air in the pressure is 1/(1 + 1.608 w); the moist gas is lighter.
    EXPECT_NEAR(humid / dry, 1 / (1 + 0.015 * 1.608), 3e-3);
}

}  // namespace
}  // namespace windwall::engine
