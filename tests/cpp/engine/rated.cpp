// The stock engine and the figures that its maker printed.

#include "windwall/engine/fit_rated.hpp"
#include "windwall/engine/select_priors.hpp"
#include "windwall/engine/stock.hpp"
#include "windwall/fields/field_path.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "engines.hpp"

namespace windwall::engine {
namespace {

constexpr Design sport_single{Chamber::two_valve_hemispherical, CooledBy::air, Duty::sport,
                              MixtureBy::carburettor, Silencing::muffled};

/// A single of which only sizes, design and rated figures are stated.
Cylinder made(double torque, double power) {
    Cylinder engine = single_499();
    engine.design = sport_single;
    select_priors(engine, false, [](std::string_view) { return false; });
    engine.rated.emplace();
    engine.rated->compression_ratio = 9;
    if (torque > 0) {
        engine.rated->torque = torque;
        engine.rated->torque_speed = 5000 * rpm;
    }
    if (power > 0) {
        engine.rated->power = power;
        engine.rated->power_speed = 6500 * rpm;
    }
    return engine;
}

/// Its free inputs with the sigmas of their class.
std::vector<FreeInput> free_inputs(const Cylinder& engine) {
    std::vector<FreeInput> free;
    for (const ClassQuantity& quantity : class_quantities())
        for (const std::string_view address : free_addresses())
            if (address == quantity.address)
                free.push_back({address, estimate(quantity, engine, engine.design), 0, 1e6});
    return free;
}

RatedFit fitted(Cylinder& engine) { return fit_rated(engine, {}, free_inputs(engine), 0, 0); }

double torque_of(const Cylinder& engine, double engine_speed) {
    const Cylinder stock = stock_of(engine);
    const Intake intake = full_throttle(stock, {}, engine_speed, stock.rated->temperature);
    return stock.work(intake, {}, 0).torque();
}

// A stated drop is that at full power; a filter loses with the square of what flows.
TEST(StockEngine, DrawsThroughItsIntake) {
    Cylinder stock = made(0, 23.5e3);
    stock.rated->intake_drop = 4e3;
    const double day = stock.rated->pressure;
    const auto manifold = [&](double engine_speed) {
        return full_throttle(stock, {}, engine_speed, 298.15).charge.pressure;
    };
    EXPECT_NEAR(manifold(6500 * rpm), day - 4e3, 1e-9);
    EXPECT_NEAR(manifold(3250 * rpm), day - 1e3, 1e-9);
    EXPECT_GT(manifold(65000 * rpm), 0.5 * day);  // far beyond it there is still air
}

// Pressure behind the valves and head follow from the flow that they let through.
TEST(StockEngine, DrawsTheFlowThatItsStateFollowsFrom) {
    const Cylinder stock = stock_of(made(36.3, 23.5e3));
    for (const double turns : {800.0, 3000.0, 6500.0, 12000.0}) {
        const Intake intake = full_throttle(stock, {}, turns * rpm, 298.15);
        EXPECT_NEAR(stock.gas_demand(intake, {}) / intake.charge.gas_flow(), 1, 1e-13);
    }
}

TEST(StockEngine, HasNoWarmAirToBeCooledBy) {
    Cylinder engine = made(36.3, 0);
    const double bare = torque_of(engine, 5000 * rpm);
    engine.cooling.warm_air_share = 0.4;
    EXPECT_EQ(torque_of(engine, 5000 * rpm), bare);
}

TEST(RatedFigures, AreMetAsWellAsTheyAreKnown) {
    Cylinder engine = made(36.3, 23.5e3);
    const RatedFit fit = fitted(engine);
    ASSERT_EQ(fit.figures.size(), 2u);
    for (const RatedFigure& figure : fit.figures) {
        EXPECT_LT(std::abs(figure.met - figure.rated), figure.sigma) << figure.key;
        EXPECT_LT(std::abs(figure.met - figure.rated), std::abs(figure.before - figure.rated));
        EXPECT_FALSE(figure.unreconciled());
    }
    EXPECT_NEAR(torque_of(engine, 5000 * rpm), fit.figures[0].met, 1e-9);
}

TEST(RatedFigures, MoveEachInputByItsSigmaAndItsSlope) {
    // At the least sum of squares sigma_i d(model)/dx_i lambda = (x_i - x0_i)/sigma_i for each i.
    Cylinder engine = made(36.3, 0);
    const RatedFit fit = fitted(engine);
    const double pull =
        (fit.figures[0].rated - fit.figures[0].met) / std::pow(fit.figures[0].sigma, 2);
    const double here = torque_of(engine, 5000 * rpm);
    for (const MovedInput& moved : fit.inputs) {
        Cylinder other = engine;
        const auto path =
            fields::find_number(fields::group_type<Cylinder>, &other, moved.input.address);
        const double small = 1e-3 * moved.input.known.sigma;
        path->at(&other) += small;
        const double slope = (torque_of(other, 5000 * rpm) - here) / 1e-3;
        EXPECT_NEAR(moved.sigmas(), pull * slope, 2e-3) << moved.input.address;
    }
}

TEST(RatedFigures, LeaveLessInDoubt) {
    Cylinder engine = made(36.3, 23.5e3);
    const RatedFit fit = fitted(engine);
    for (const MovedInput& moved : fit.inputs)
        EXPECT_LE(moved.met.sigma, moved.input.known.sigma) << moved.input.address;
    EXPECT_LT(fit.inputs[0].met.sigma, 0.95 * fit.inputs[0].input.known.sigma);
}

TEST(RatedFigures, OfTheEngineItselfMoveNothing) {
    Cylinder engine = made(30, 20e3);
    engine.rated->torque = torque_of(engine, 5000 * rpm);
    engine.rated->power = torque_of(engine, 6500 * rpm) * 6500 * rpm;
    const RatedFit fit = fitted(engine);
    for (const MovedInput& moved : fit.inputs)
        EXPECT_NEAR(moved.sigmas(), 0, 1e-6) << moved.input.address;
}

TEST(RatedFigures, ThatCannotBeAreSaidNotToBeReconciled) {
    Cylinder engine = made(90, 0);
    std::vector<FreeInput> narrow = free_inputs(engine);
    for (FreeInput& input : narrow) {
        input.low = input.known.value - input.known.sigma;
        input.high = input.known.value + input.known.sigma;
    }
    const RatedFit fit = fit_rated(engine, {}, narrow, 0, 0);
    EXPECT_TRUE(fit.figures[0].unreconciled());
    for (const MovedInput& moved : fit.inputs) {
        EXPECT_GE(moved.met.value, moved.input.low);
        EXPECT_LE(moved.met.value, moved.input.high);
    }
}

TEST(RatedFigures, GrossOnesSayLessOfTheEngineAsSold) {
    Cylinder net = made(36.3, 0), gross = made(36.3, 0);
    gross.rated->as = RatedAs::gross;
    fitted(net);
    fitted(gross);
    EXPECT_LT(gross.breathing.peak_efficiency, net.breathing.peak_efficiency);
}

TEST(RatedFigures, ServeTheChangedEngine) {
    Cylinder stock = made(36.3, 0), raised = stock;
    raised.compression_ratio = 11;
    fitted(stock);
    fitted(raised);
    EXPECT_NEAR(raised.breathing.peak_efficiency, stock.breathing.peak_efficiency, 1e-9);
}

TEST(RatedFuel, LeavesAReserveAtTheStockPoint) {
    Cylinder engine = made(36.3, 0);
    engine.rated->research_octane = 91;
    engine.rated->motor_octane = 83;
    anchor_by_rated_fuel(engine, {});
    media::Fuel sold;
    sold.research_octane = 91;
    sold.motor_octane = 83;
    const Cylinder stock = stock_of(engine);
    Intake hot = full_throttle(stock, sold, 5000 * rpm, 308.15);
    const Spark spark = stock.best_spark(hot, sold);
    // The anchor's day is humid, this one is dry: 390 w/(1 + w/0.040) at 7.1 g/kg.
    EXPECT_NEAR(spark.margin, 3 - 2.35, 0.01);
    EXPECT_EQ(engine.knock_anchor.spread(), 5);
    engine.rated->research_octane = 95;
    engine.rated->motor_octane.reset();
    anchor_by_rated_fuel(engine, {});
    EXPECT_GT(engine.knock_anchor.octane_number, 87 - 3);
}

// The last bits of a fit follow the machine that made it; nine digits of it do not.
TEST(RatedFigures, AreKeptToNineDigits) {
    Cylinder engine = made(40, 24e3);
    const RatedFit fit = fitted(engine);
    ASSERT_FALSE(fit.inputs.empty());
    const auto short_enough = [](double number) {
        char text[32];
        std::snprintf(text, sizeof text, "%.9g", number);
        return std::strtod(text, nullptr) == number;
    };
    for (const MovedInput& moved : fit.inputs) {
        EXPECT_TRUE(short_enough(moved.met.value)) << moved.input.address;
        EXPECT_TRUE(short_enough(moved.met.sigma)) << moved.input.address;
    }
    engine.rated->research_octane = 95;
    anchor_by_rated_fuel(engine, {});
    EXPECT_TRUE(short_enough(engine.knock_anchor.manifold_pressure));
    EXPECT_TRUE(short_enough(engine.knock_anchor.charge_temperature));
    EXPECT_TRUE(short_enough(engine.knock_anchor.octane_number));
}

}  // namespace
}  // namespace windwall::engine
