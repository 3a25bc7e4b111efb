#include "windwall/solve/point/point.hpp"

#include "windwall/solve/point/loop_bracket.hpp"
#include "windwall/vehicle/balance/flywheel.hpp"

#include <cmath>

namespace windwall::solve {
namespace {

using vehicle::Balance;
using vehicle::OperatingCondition;

constexpr double balanced = 1e-11;  // of the flow; the published accounts close to 1e-9
constexpr double close = 1e-10;     // however Newton's method ended
// Where no step helps any more: a wide plate that drops a thousandth of a pascal of one atmosphere
// passes a flow that doubles know to 1e-8 of it.
constexpr double rounded = 1e-8;
constexpr std::array other_returns{0.0, 2.0, 4.0, 6.0, 8.0, 10.0};
constexpr long most_bracketed = 200000;  // evaluations of one solver, which take half a second

}  // namespace

/// A blower whose charge leaves the range of the gas, or that passes nothing, has run away.
std::string_view run_away(const Balance& balance) {
    for (std::size_t i = 0; i < balance.stations().size(); ++i)
        if (balance.stations()[i].compression.capped) return balance.vehicle().charge_path[i].id;
    return {};
}

PointSolver::PointSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                         std::span<vehicle::Block* const> blocks)
    : balance_(vehicle), what_if_(what_if) {
    for (vehicle::Block* const block : blocks)
        balance_.attach(*block);
}

Point PointSolver::at(const OperatingCondition& condition) {
    ++points_;
    if (state_.knocked && !valves_move(condition))
        if (const auto held = hold_warm(condition)) return *held;
    state_.knocked = false;
    const Point open = solve(condition);
    if (open.outcome.status != Status::solved || open.spark.by_spark) return open;
    if (const auto held = hold_from_cold(condition, open.spark)) return *held;
    return search_opening(condition);
}

Point PointSolver::solve(const OperatingCondition& condition) {
    balance_.hold(condition, what_if_);
    return describe(balance_air());
}

Point PointSolver::idle_at(const OperatingCondition& condition, const vehicle::IdleSetting& idle) {
    ++points_;
    state_.knocked = false;
    balance_.hold(condition, what_if_);
    balance_.meter(idle.fuel_share);
    return describe(balance_air(), idle.retard);
}

/// Where Newton's method does not arrive, the next point starts from where this one did.
Outcome PointSolver::join(vehicle::Block& block, const OperatingCondition& condition,
                          numerics::JacobianMemory& jacobian, int most_evaluations) {
    ++points_;
    const std::array start = state_.unknowns;
    const std::size_t air = balance_.unknowns().size();
    balance_.attach(block);
    balance_.hold(condition, what_if_);
    const std::span<double> x(state_.unknowns.data(), balance_.unknowns().size());
    if (!state_.warm) balance_.guess(x);
    block.guess(balance_, x);
    Outcome outcome = newton(x, jacobian, most_evaluations);
    outcome = most_open(outcome, x, air, jacobian, most_evaluations);
    balance_.detach();
    evaluations_ += outcome.evaluations;
    state_.knocked = false;
    if (!run_away(balance_).empty()) outcome.status = Status::not_converged;
    if (outcome.status == Status::solved)
        state_.warm = true;
    else
        state_.unknowns = start;
    return outcome;
}

Outcome PointSolver::balance_air() {
    const std::span<double> x(state_.unknowns.data(), balance_.unknowns().size());
    if (!state_.warm) {
        balance_.guess(x);
        state_.jacobian.known = false;
    }
    Outcome outcome = newton(x, state_.jacobian, newton_evaluations);
    if (outcome.status != Status::solved) outcome = elsewhere(outcome, x, state_.jacobian);
    if (outcome.status != Status::solved) {
        const int spent = outcome.evaluations;
        outcome = bracket_network(balance_, x, static_cast<int>(most_bracketed - state_.bracketed));
        state_.bracketed += outcome.evaluations;
        outcome.evaluations += spent;
        state_.jacobian.known = false;
        if (!balance_.loops().empty() || balance_.has_blocks() || balance_.has_switches())
            outcome = polish(outcome, x);
    }
    if (const auto part = run_away(balance_); outcome.status == Status::solved && !part.empty()) {
        outcome.status = Status::no_survivable_state;
        outcome.worst = part;
    }
    outcome = most_open(outcome, x, x.size(), state_.jacobian, newton_evaluations);
    state_.warm = outcome.status == Status::solved;
    evaluations_ += outcome.evaluations;
    return outcome;
}

/// From other guesses of what goes round, where gas can.
Outcome PointSolver::elsewhere(Outcome failed, std::span<double> x,
                               numerics::JacobianMemory& jacobian) {
    if (balance_.loops().empty()) return failed;
    for (const double unknown : other_returns) {
        if (failed.status == Status::solved) break;
        balance_.guess(x);
        for (const vehicle::Loop& loop : balance_.loops())
            x[loop.flow] = unknown;
        jacobian.known = false;
        const int spent = failed.evaluations;
        failed = newton(x, jacobian, newton_evaluations);
        failed.evaluations += spent;
    }
    return failed;
}

/// Brackets inside brackets leave the balance of a loop a little open; Newton's method closes it.
Outcome PointSolver::polish(const Outcome& near, std::span<double> x) {
    if (near.status == Status::no_survivable_state) return near;
    if (const auto part = run_away(balance_); !part.empty())
        return {Status::no_survivable_state, part, near.residual, near.evaluations};
    Outcome outcome = newton(x, state_.jacobian, newton_evaluations);
    outcome.evaluations += near.evaluations;
    return outcome;
}

Outcome PointSolver::newton(std::span<double> x, numerics::JacobianMemory& jacobian,
                            int most_evaluations) {
    const vehicle::Unknowns& unknowns = balance_.unknowns();
    const numerics::NewtonOptions options{balanced, most_evaluations, unknowns.scales(),
                                          unknowns.step_limits()};
    const auto residuals = [this](std::span<const double> at, std::span<double> r) {
        balance_.residuals(at, r);
    };
    const auto result = numerics::solve_newton(residuals, x, options, &jacobian);
    const bool converged = result.status == numerics::NewtonStatus::converged;
    const bool stalled = result.status == numerics::NewtonStatus::stalled;
    const bool closed = converged || result.norm <= (stalled ? rounded : close);
    return {closed ? Status::solved : Status::not_converged,
            unknowns[static_cast<std::size_t>(result.worst)].owner, result.norm,
            result.evaluations};
}

Point PointSolver::describe(const Outcome& outcome, std::optional<double> retard) const {
    Point point{balance_.condition(), outcome, {}, {}, 0, 0};
    if (!outcome.answered()) return point;
    const vehicle::Vehicle& car = balance_.vehicle();
    const media::Fuel& fuel = balance_.fuel();
    const engine::Intake intake = balance_.worked_out(balance_.manifold());
    car.engine.visit([&](const auto& engine) {
        point.spark = retard ? engine.best_spark(intake, fuel).later(*retard)
                             : engine.choose_spark(intake, fuel);
        point.work = engine.work(intake, fuel, point.spark.retard);
    });
    point.blower_power = vehicle::blower_power(balance_);
    point.torque = vehicle::flywheel_torque(balance_, point.work);
    return point;
}

}  // namespace windwall::solve
