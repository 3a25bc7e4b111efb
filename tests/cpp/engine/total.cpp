// Every answer is a finite number anywhere a solver may look, and nothing is allocated.

#include <gtest/gtest.h>

#include <cmath>

#include "allocations.hpp"
#include "engines.hpp"

namespace windwall::engine {
namespace {

Cylinder with_injector() {
    Cylinder engine = single_499();
    engine.injector = Injector{};
    engine.injector->rated_flow = 440e-6 / 60;
    engine.injector->referenced = false;
    engine.spark.table.column = {{100, 400, 700}, {0.1, 0.2, 0.05}};
    return engine;
}

struct Answers {
    double demand, exhaust;
    Spark spark;
    Work work;
    Heat heat;
    Injection injection;
    Temperatures hot;
    double integral;
};

Answers ask(const Cylinder& engine, const Intake& intake, const media::Fuel& fuel) {
    Answers answers{};
    answers.exhaust = engine.exhaust_pressure(intake, fuel);
    answers.demand = engine.gas_demand(intake, fuel);
    answers.spark = engine.choose_spark(intake, fuel);
    answers.work = engine.work(intake, fuel, answers.spark.retard);
    answers.heat = heat(answers.work, engine.exhaust_gas(intake, fuel, answers.work));
    answers.injection = *engine.injection(intake, fuel, answers.work);
    answers.hot = engine.temperatures(intake, fuel);
    answers.integral = *engine.integral_requirement(intake, fuel, answers.spark.retard);
    return answers;
}

bool finite(const Answers& a) {
    for (const double number :
         {a.demand, a.exhaust, a.spark.retard, a.spark.margin, a.spark.requirement,
          a.work.indicated, a.work.rubbing, a.work.pumping, a.work.accessories, a.work.torque(),
          a.work.brake_mean_pressure, a.work.fuel_flow, a.heat.walls, a.heat.unburnt,
          a.injection.pulse_width, a.injection.duty, a.hot.head, a.hot.oil, a.integral})
        if (!std::isfinite(number)) return false;
    return true;
}

template <class Check>
void grid(Check&& check) {
    for (const double speed : {0.0, 1e-3, 1.0, 60.0, 400.0, 800.0, 1500.0})
        for (const double pressure : {15e3, 40e3, 99e3, 160e3, 250e3, 400e3})
            for (const double temperature : {240.0, 300.0, 400.0, 600.0})
                for (const double flow : {1e-9, 1e-3, 0.03, 0.3}) {
                    Intake intake = intake_at(speed, pressure, temperature, 99e3, 0.01);
                    intake.charge.dry_air = flow;
                    check(intake);
                }
}

TEST(Total, FiniteEverywhere) {
    const Cylinder engine = with_injector();
    grid([&](const Intake& intake) {
        const Answers answers = ask(engine, intake, {});
        EXPECT_TRUE(finite(answers)) << intake.engine_speed << ' ' << intake.charge.pressure << ' '
                                     << intake.charge.temperature << ' ' << intake.charge.dry_air;
        EXPECT_GE(answers.demand, 0);
        EXPECT_GE(answers.exhaust, 99e3);
    });
}

// A kink would stall a Newton step: second differences shrink with the square of the step.
TEST(Total, FlowIsSmoothInPressureTemperatureAndSpeed) {
    const Cylinder engine = with_injector();
    const auto bend = [&](double speed, double pressure, double temperature, double step) {
        const auto flow = [&](double share) {
            Intake intake = intake_at(speed * share, pressure * share, temperature * share);
            return engine.gas_demand(intake, {});
        };
        return std::abs(flow(1 + step) - 2 * flow(1) + flow(1 - step)) / flow(1);
    };
    grid([&](const Intake& intake) {
        if (intake.engine_speed < 60) return;
        const double p = intake.charge.pressure, T = intake.charge.temperature;
        // Curvature may jump where the monotone cubic joins, values and slopes never.
        EXPECT_LT(bend(intake.engine_speed, p, T, 1e-4), 40e-8);
    });
}

TEST(Total, NothingIsAllocated) {
    const Cylinder engine = with_injector();
    Intake intake = intake_at(450, 140e3, 340);
    intake.charge.dry_air = 0.02;
    ask(engine, intake, {});  // tables are made once
    const std::size_t before = allocations();
    double sum = 0;
    for (int round = 0; round < 100; ++round)
        sum += ask(engine, intake, {}).work.torque();
    EXPECT_EQ(allocations(), before);
    EXPECT_GT(sum, 0);
}

TEST(Total, ValidityNamesWhatIsLeft) {
    Cylinder engine = single_499();
    const Intake usual = settled(engine, intake_at(450, 100e3, 300), {});
    EXPECT_TRUE(engine.validity(usual, {}, 0).all());
    EXPECT_FALSE(engine.validity(usual, {}, 31 * degree).retard);
    EXPECT_FALSE(engine.validity(intake_at(450, 201e3, 300), {}, 0).knock_pressure);
    EXPECT_FALSE(engine.validity(intake_at(1500, 100e3, 300), {}, 0).mach_index);
    EXPECT_FALSE(engine.validity(intake_at(450, 30e3, 300), {}, 0).pressure_ratio);
    engine.lambda = 0.7;
    EXPECT_FALSE(engine.validity(usual, {}, 0).mixture);
    engine.compression_ratio = 12.5;
    EXPECT_FALSE(engine.validity(usual, {}, 0).compression_ratio);
}

}  // namespace
}  // namespace windwall::engine
