#include "windwall/vehicle/balance/knock_hold.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::vehicle {
namespace {

constexpr double octane_scale = 100;  // octane numbers that weigh as much as a whole flow
constexpr double most_step = 0.3;     // of the logarithm of the opening

}  // namespace

double spare_margin(const engine::SparkPlan& plan, const engine::Spark& spark) noexcept {
    return spark.margin - plan.margin +
           engine::octane_per_radian * (plan.most_retard - spark.retard);
}

void KnockHold::ask(double opening, double held_back) noexcept {
    asked_ = opening;
    first_guess_ = held_back;
}

void KnockHold::declare(Unknowns& unknowns) {
    retard_ = unknowns.declare({"engine", "retard"});
    held_back_ = unknowns.declare({"engine", "held back", 0, 1, most_step});
}

void KnockHold::guess(const Balance& balance, std::span<double> x) const noexcept {
    x[retard_] = balance.vehicle().engine.visit(
        [](const auto& engine) { return engine::SparkPlan(engine.spark).most_retard; });
    x[held_back_] = first_guess_;
}

void KnockHold::act(Balance& balance, std::span<const double> x) const noexcept {
    balance.set_opening(asked_ * std::exp(-x[held_back_]));
}

void KnockHold::residuals(const Balance& balance, std::span<const double> x,
                          std::span<double> r) const noexcept {
    const engine::Intake intake = balance.intake(balance.manifold());
    balance.vehicle().engine.visit([&](const auto& engine) {
        const engine::SparkPlan& plan = engine.spark;
        const double spare =
            spare_margin(plan, engine.choose_spark(intake, balance.vehicle().fuel));
        const double missing = plan.most_retard - x[retard_] - spare / engine::octane_per_radian;
        r[retard_] = x[retard_] - std::clamp(x[retard_] + missing, 0.0, plan.most_retard);
        r[held_back_] = std::min(x[held_back_], spare / octane_scale);
    });
}

}  // namespace windwall::vehicle
