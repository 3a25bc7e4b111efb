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

void enrich(Balance& balance, double retard) noexcept {
    balance.enrich(balance.vehicle().engine.visit([&](const auto& engine) {
        const engine::SparkPlan& plan = engine.spark;
        return plan.enrichment(retard, engine.lambda);
    }));
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
    const engine::Intake& intake = balance.intake();
    const double spare = balance.vehicle().engine.visit([&](const auto& engine) {
        const engine::SparkPlan& plan = engine.spark;
        return plan.spare(engine.best_spark(intake, balance.fuel()).later(x[retard_]));
    });
    const double left = spark_left(balance, intake, x[retard_]);
    r[retard_] = -std::max(-x[retard_], std::min(-spare / engine::octane_per_radian, left));
    const double at_its_end = spare + engine::octane_per_radian * std::max(0.0, left);
    r[held_back_] = std::min(x[held_back_], at_its_end / octane_scale);
}

}  // namespace windwall::vehicle
