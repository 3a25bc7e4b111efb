#include "windwall/vehicle/balance/knock_hold.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::vehicle {
namespace {

constexpr double octane_scale = 100;  // octane numbers that weigh as much as a whole flow
constexpr double most_step = 0.3;     // of the logarithm of the opening
constexpr double exhaust_per_radian = 6 * 180 / std::numbers::pi;  // K, about; a scale only

/// Radians by which the spark may be later still; negative where the exhaust is too hot.
template <class Engine>
double spark_left(const Engine& engine, const engine::Intake& intake, const media::Fuel& fuel,
                  double retard) noexcept {
    const engine::SparkPlan& plan = engine.spark;
    const engine::Work work = engine.work(intake, fuel, retard);
    const double temperature = engine.exhaust_gas(intake, fuel, work).temperature;
    return std::min(plan.most_retard - retard,
                    (plan.hottest_exhaust - temperature) / exhaust_per_radian);
}

}  // namespace

MeansLeft means_left(const Balance& balance, const engine::Spark& spark) noexcept {
    const engine::Intake intake = balance.intake(balance.manifold());
    const media::Fuel& fuel = balance.vehicle().fuel;
    engine::Intake own_mixture = intake;
    own_mixture.enrichment = 0;
    return balance.vehicle().engine.visit([&](const auto& engine) -> MeansLeft {
        const engine::SparkPlan& plan = engine.spark;
        const double at_best = engine.spark_at(own_mixture, fuel, 0).margin;
        if (plan.policy == engine::SparkPolicy::as_given) return {at_best, 0, 0, 0};
        const double left = spark_left(engine, intake, fuel, spark.retard);
        const double richer = engine.lambda - intake.enrichment - plan.richest;
        return {at_best, std::max(0.0, left), intake.enrichment,
                intake.carburetted ? 0 : std::max(0.0, richer)};
    });
}

double spark_left(const Balance& balance, double retard) noexcept {
    return balance.vehicle().engine.visit([&](const auto& engine) {
        return spark_left(engine, balance.intake(balance.manifold()), balance.vehicle().fuel,
                          retard);
    });
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
    const engine::Intake intake = balance.intake(balance.manifold());
    const media::Fuel& fuel = balance.vehicle().fuel;
    balance.vehicle().engine.visit([&](const auto& engine) {
        const engine::SparkPlan& plan = engine.spark;
        const engine::Spark spark = engine.spark_at(intake, fuel, x[retard_]);
        const double spare = spark.margin - plan.wanted_margin(spark.spread);
        const double left = spark_left(engine, intake, fuel, x[retard_]);
        r[retard_] = -std::max(-x[retard_], std::min(-spare / engine::octane_per_radian, left));
        const double at_its_end = spare + engine::octane_per_radian * std::max(0.0, left);
        r[held_back_] = std::min(x[held_back_], at_its_end / octane_scale);
    });
}

}  // namespace windwall::vehicle
