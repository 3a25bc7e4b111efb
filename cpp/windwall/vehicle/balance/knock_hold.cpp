#include "windwall/vehicle/balance/knock_hold.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace windwall::vehicle {
namespace {

constexpr double octane_scale = 100;  // octane numbers that weigh as much as a whole flow
constexpr double most_step = 0.3;     // of the logarithm of the opening

double spark_left(const Balance& balance, const engine::Intake& intake, double retard) noexcept {
    const media::Fuel& fuel = balance.fuel();
    return balance.vehicle().engine.visit([&](const auto& engine) {
        const engine::Work work = engine.work(intake, fuel, retard);
        const engine::SparkPlan& plan = engine.spark;
        return plan.left(retard, plan.richest_at(engine.lambda, !intake.carburetted),
                         engine.exhaust_gas(intake, fuel, work).temperature);
    });
}

const engine::SparkPlan& spark_plan(const Balance& balance) noexcept {
    return balance.vehicle().engine.visit(
        [](const auto& engine) -> const engine::SparkPlan& { return engine.spark; });
}

/// In the last march.
engine::Spark best_spark(const Balance& balance) noexcept {
    return balance.vehicle().engine.visit(
        [&](const auto& engine) { return engine.best_spark(balance.intake(), balance.fuel()); });
}

/// From what it leaves and by how much it may be later.
double beside_plan(double retard, double spare, double left) noexcept {
    return -std::max(-retard, std::min(-spare / engine::octane_per_radian, left));
}

}  // namespace

MeansLeft means_left(const Balance& balance, const engine::Spark& spark,
                     double exhaust_temperature) noexcept {
    engine::Intake intake = balance.intake(balance.manifold());
    const double enrichment = std::exchange(intake.enrichment, 0);
    return balance.vehicle().engine.visit([&](const auto& engine) -> MeansLeft {
        const engine::SparkPlan& plan = engine.spark;
        const double at_best = engine.best_spark(intake, balance.fuel()).margin;
        if (plan.policy == engine::SparkPolicy::as_given) return {at_best, 0, 0, 0};
        const double richer = engine.lambda - enrichment - plan.richest;
        const double rich = plan.richest_at(engine.lambda, !intake.carburetted);
        return {at_best, std::max(0.0, plan.left(spark.retard, rich, exhaust_temperature)),
                enrichment, intake.carburetted ? 0 : std::max(0.0, richer)};
    });
}

double spark_left(const Balance& balance, double retard) noexcept {
    return spark_left(balance, balance.worked_out(balance.manifold()), retard);
}

double beside_plan(const Balance& balance, double retard) noexcept {
    const engine::SparkPlan& plan = spark_plan(balance);
    const engine::Spark best = best_spark(balance);
    if (plan.policy == engine::SparkPolicy::as_given)
        return retard - plan.choose(balance.intake().engine_speed, best).retard;
    const double spare = plan.spare(best.later(retard));
    // With so much to spare the spark is the best one, however late it might be.
    if (!best.modelled || spare >= engine::octane_per_radian * retard) return retard;
    return beside_plan(retard, spare, spark_left(balance, balance.intake(), retard));
}

void enrich(Balance& balance, double retard) noexcept {
    const double taken_off = balance.vehicle().engine.visit(
        [&](const auto& engine) { return engine.spark.enrichment(retard, engine.lambda); });
    const bool chosen = spark_plan(balance).policy == engine::SparkPolicy::hold_margin;
    balance.enrich(chosen ? taken_off : 0);
}

void KnockHold::ask(double opening, double held_back, double retard) noexcept {
    asked_ = opening;
    first_guess_ = held_back;
    first_retard_ = retard;
}

void KnockHold::declare(Unknowns& unknowns) {
    retard_ = unknowns.declare({"engine", "retard"});
    held_back_ = unknowns.declare({"engine", "held back", 0, 1, most_step});
}

void KnockHold::guess(const Balance&, std::span<double> x) const noexcept {
    x[retard_] = first_retard_;
    x[held_back_] = first_guess_;
}

void KnockHold::act(Balance& balance, std::span<const double> x) const noexcept {
    balance.set_opening(asked_ * std::exp(-x[held_back_]));
    enrich(balance, x[retard_]);
}

void KnockHold::residuals(const Balance& balance, std::span<const double> x,
                          std::span<double> r) const noexcept {
    const double retard = x[retard_];
    const double spare = spark_plan(balance).spare(best_spark(balance).later(retard));
    const double left = spark_left(balance, balance.intake(), retard);
    r[retard_] = beside_plan(retard, spare, left);
    const double at_its_end = spare + engine::octane_per_radian * std::max(0.0, left);
    r[held_back_] = std::min(x[held_back_], at_its_end / octane_scale);
}

}  // namespace windwall::vehicle
