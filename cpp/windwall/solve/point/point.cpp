#include "windwall/solve/point/point.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/point/loop_bracket.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::solve {
namespace {

using vehicle::Balance;
using vehicle::Condition;

constexpr double balanced = 1e-11;  // of the flow; the published accounts close to 1e-9
constexpr double rounded = 1e-10;   // where rounding leaves no step that helps
constexpr std::array other_returns{0.0, 2.0, 4.0, 6.0, 8.0, 10.0};
constexpr int newton_evaluations = 80;      // then brackets take over
constexpr double smallest_opening = 0.02;   // of the plate's travel, when the margin is sought
constexpr double opening_step = 0.85;       // downwards, in search of one that holds it
constexpr double opening_tolerance = 1e-7;  // of the plate's travel

double blower_power(const Balance& balance) {
    double power = 0;
    for (const vehicle::Station& station : balance.stations())
        power += station.compression.crank_power;
    return power;
}

/// A blower whose charge leaves the range of the gas, or that passes nothing, has run away: its id,
/// or nothing.
std::string_view run_away(const Balance& balance) {
    for (std::size_t i = 0; i < balance.stations().size(); ++i)
        if (balance.stations()[i].compression.capped) return balance.vehicle().charge_path[i].id;
    return {};
}

}  // namespace

PointSolver::PointSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if)
    : balance_(vehicle), what_if_(what_if) {}

Point PointSolver::at(const Condition& condition) {
    ++points_;
    const Point open = solve(condition);
    if (open.outcome.status != Status::solved || open.spark.in_range) return open;
    return hold_margin(condition, open);
}

Point PointSolver::solve(const Condition& condition) {
    balance_.hold(condition, what_if_);
    return describe(balance_air());
}

Outcome PointSolver::balance_air() {
    const std::span<double> x(x_.data(), balance_.unknowns());
    if (!warm_) {
        balance_.guess(x);
        jacobian_.known = false;
    }
    Outcome outcome = newton(x);
    if (outcome.status != Status::solved) outcome = elsewhere(outcome, x);
    if (outcome.status != Status::solved) {
        const int spent = outcome.evaluations;
        outcome = bracket_network(balance_, x);
        outcome.evaluations += spent;
        jacobian_.known = false;
        if (!balance_.loops().empty()) outcome = polish(outcome, x);
    }
    if (const auto part = run_away(balance_); outcome.status == Status::solved && !part.empty()) {
        outcome.status = Status::no_survivable_state;
        outcome.worst = part;
    }
    warm_ = outcome.status == Status::solved;
    evaluations_ += outcome.evaluations;
    return outcome;
}

/// From other guesses of what goes round, where gas can.
Outcome PointSolver::elsewhere(Outcome failed, std::span<double> x) {
    if (balance_.loops().empty()) return failed;
    for (const double unknown : other_returns) {
        if (failed.status == Status::solved) break;
        balance_.guess(x);
        for (const vehicle::Loop& loop : balance_.loops())
            x[loop.unknown] = unknown;
        jacobian_.known = false;
        const int spent = failed.evaluations;
        failed = newton(x);
        failed.evaluations += spent;
    }
    return failed;
}

/// Brackets inside brackets leave the balance of a loop a little open; Newton's method closes it.
Outcome PointSolver::polish(const Outcome& near, std::span<double> x) {
    if (near.status == Status::no_survivable_state) return near;
    if (const auto part = run_away(balance_); !part.empty())
        return {Status::no_survivable_state, part, near.residual, near.evaluations};
    Outcome outcome = newton(x);
    outcome.evaluations += near.evaluations;
    return outcome;
}

Outcome PointSolver::newton(std::span<double> x) {
    constexpr std::array<double, numerics::most_unknowns> limit = [] {
        std::array<double, numerics::most_unknowns> steps{};
        steps.fill(0.5);  // of a logarithm: no unknown changes by more than a factor 1.65 at once
        return steps;
    }();
    numerics::NewtonOptions options{balanced, newton_evaluations, {}, {}};
    options.step_limit = std::span(limit).first(x.size());
    const auto residuals = [this](std::span<const double> at, std::span<double> r) {
        balance_.residuals(at, r);
    };
    const auto result = numerics::solve_newton(residuals, x, options, &jacobian_);
    const bool converged = result.status == numerics::NewtonStatus::converged;
    const bool closed = converged || result.norm <= rounded;
    return {closed ? Status::solved : Status::not_converged,
            balance_.name(static_cast<std::size_t>(result.worst)), result.norm, result.evaluations};
}

Point PointSolver::describe(const Outcome& outcome) const {
    Point point{balance_.condition(), outcome, {}, {}, 0, 0};
    if (!outcome.answered()) return point;
    const vehicle::Vehicle& car = balance_.vehicle();
    const engine::Intake intake = balance_.intake(balance_.manifold());
    car.engine.visit([&](const auto& engine) {
        point.spark = engine.choose_spark(intake, car.fuel);
        point.work = engine.work(intake, car.fuel, point.spark.retard);
    });
    point.blower_power = blower_power(balance_);
    point.torque = what_if_.torque_factor *
                   (point.work.torque() - point.blower_power / point.condition.engine_speed);
    return point;
}

/// No spark in range holds the margin at this opening: the highest opening that does is the answer.
Point PointSolver::hold_margin(Condition condition, const Point& open) {
    const auto plan =
        balance_.vehicle().engine.visit([](const auto& engine) { return engine.spark; });
    // What the latest spark in range would leave beyond the wanted margin; a degree of retard is
    // worth one octane number.
    const auto spare = [&](const engine::Spark& spark) {
        return spark.margin - plan.margin +
               (plan.most_retard - spark.retard) * 180 / std::numbers::pi;
    };
    Point point = open;
    const auto excess = [&](double opening) {
        condition.opening = opening;
        point = solve(condition);
        return point.outcome.answered() ? spare(point.spark) : -1e3;
    };
    // Downwards in steps: a nearly shut throttle before a blower makes the charge hot, so the
    // margin may be lost again further down.
    double high = condition.opening, above = spare(open.spark);
    double low = high, below = above;
    while (below < 0) {
        high = low;
        above = below;
        low *= opening_step;
        if (low < smallest_opening) {
            point.outcome.status = Status::no_survivable_state;
            point.outcome.worst = always_knocks;
            return point;
        }
        below = excess(low);
    }
    const auto held =
        numerics::find_root(excess, {low, high, below, above, 0, true}, {opening_tolerance, 0, 60});
    excess(std::max(low, held.x - opening_tolerance));
    if (point.outcome.answered()) point.outcome.status = Status::knock_limited;
    return point;
}

}  // namespace windwall::solve
