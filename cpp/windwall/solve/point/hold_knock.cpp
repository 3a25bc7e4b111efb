// What a point does where no spark in range leaves the wanted margin to knock.
#include "windwall/numerics/root.hpp"
#include "windwall/solve/point/point.hpp"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double smallest_opening = 0.02;   // of the plate's travel, when the margin is sought
constexpr double opening_step = 0.85;       // downwards, in search of one that holds it
constexpr double first_held_back = 0.35;    // where most plates begin to throttle
constexpr double opening_tolerance = 1e-7;  // of the plate's travel
constexpr double near = 0.2;  // of the logarithm of the opening: the same branch as the last point
constexpr double held_back_at_all = 1e-9;

/// Whether less throttle leaves more margin there, the air being balanced: a diagonal entry of the
/// inverse is the reciprocal of the slope with all else solved.
bool holding_back_helps(const numerics::Matrix& jacobian, std::size_t held_back) {
    const auto k = static_cast<Eigen::Index>(held_back);
    const numerics::Vector unit = numerics::Vector::Unit(jacobian.rows(), k);
    const numerics::Vector column = Eigen::PartialPivLU<numerics::Matrix>(jacobian).solve(unit);
    return column[k] > 0;
}

}  // namespace

/// Air, spark and opening in one solve. Nothing where Newton's method does not arrive, or arrives
/// where a wider throttle would hold the margin as well: then the openings are searched.
std::optional<Point> PointSolver::hold_at_once(const vehicle::OperatingCondition& condition) {
    const std::array start = x_;
    const std::size_t air = balance_.unknowns().size();
    knock_.ask(condition.opening, first_held_back);
    balance_.attach(knock_);
    balance_.hold(condition, what_if_);
    Outcome outcome = close_held_back({x_.data(), balance_.unknowns().size()});
    balance_.detach();
    evaluations_ += outcome.evaluations;
    const bool arrived = outcome.status == Status::solved;
    knocked_ = arrived && balance_.condition().opening < condition.opening * (1 - held_back_at_all);
    if (!arrived) {
        std::copy_n(start.begin(), air, x_.begin());
        return std::nullopt;
    }
    if (knocked_)
        outcome.status = Status::knock_limited;
    else
        balance_.set_opening(condition.opening);
    return describe(outcome);
}

Outcome PointSolver::close_held_back(std::span<double> x) {
    if (!knocked_) {
        knock_.guess(balance_, x);
        knock_jacobian_.known = false;
    }
    const double& held_back = x[knock_.held_back()];
    const double before = held_back;
    Outcome outcome = newton(x, knock_jacobian_);
    const bool plausible =
        run_away(balance_).empty() && balance_.condition().opening >= smallest_opening;
    const bool on_branch = std::abs(held_back - before) < near ||
                           holding_back_helps(knock_jacobian_.value, knock_.held_back());
    if (!plausible || !on_branch) outcome.status = Status::not_converged;
    return outcome;
}

/// The highest opening that holds the margin, by brackets; the hold closes what they leave.
Point PointSolver::search_opening(vehicle::OperatingCondition condition, const Point& open) {
    const vehicle::OperatingCondition asked = condition;
    const engine::SparkPlan plan = balance_.vehicle().engine.visit(
        [](const auto& engine) -> engine::SparkPlan { return engine.spark; });
    Point point = open;
    const auto excess = [&](double opening) {
        condition.opening = opening;
        point = solve(condition);
        return point.outcome.answered() ? vehicle::spare_margin(plan, point.spark) : -1e3;
    };
    // Downwards in steps: a nearly shut throttle before a blower makes the charge hot, so the
    // margin may be lost again further down.
    double high = condition.opening, above = vehicle::spare_margin(plan, open.spark);
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
    if (!point.outcome.answered()) return point;
    const vehicle::OperatingCondition bracketed = point.condition;
    knock_.ask(asked.opening, std::log(asked.opening / condition.opening));
    knock_.guess(balance_, x_);
    knock_jacobian_.known = false;
    knocked_ = true;
    const auto closed = hold_at_once(asked);
    if (closed && std::abs(closed->condition.opening / condition.opening - 1) < near)
        return *closed;
    point = solve(bracketed);
    point.outcome.status = Status::knock_limited;
    return point;
}

}  // namespace windwall::solve
