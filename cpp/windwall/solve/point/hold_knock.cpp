// What a point does where a later spark alone is not the cheapest way to the wanted margin to
// knock.
#include "windwall/numerics/root.hpp"
#include "windwall/solve/point/point.hpp"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

// Of the weather's pressure: with less in the manifold nobody would call it full throttle, and a
// blower that works into a shut plate has no cool charge to offer further down.
constexpr double least_manifold = 0.6;
constexpr double smallest_opening = 0.02;    // of the plate's travel, when the margin is sought
constexpr double opening_step = 0.85;        // downwards, in search of one that holds it
constexpr double opening_tolerance = 1e-10;  // of the plate's travel
constexpr double near = 0.2;  // of the logarithm of the opening: the same branch as the last point
constexpr double begins_to_throttle = 0.35;  // of that logarithm, for most plates
constexpr double held_back_at_all = 1e-9;
constexpr double spark_tolerance = 1e-10;                   // rad
constexpr double far_off = 10 * engine::octane_per_radian;  // octane numbers for each rad of it
constexpr double spark_precision = 1e-11;  // rad, where it is the margin that is sought
constexpr int try_evaluations = 40;        // of one try; most need half of it
constexpr int close_evaluations = 80;      // where brackets have shown that there is something
constexpr int most_rounds = 60;            // the latest spark is found in
// By how much what is left of the spark changes with it: kept near one for one.
constexpr double steepest = -3, flattest = -0.5;
// Octane numbers that a radian of retard is worth with the mixture that goes with it, about.
constexpr double octane_with_mixture = 1.5 * engine::octane_per_radian;

const engine::SparkPlan& plan_of(const vehicle::Vehicle& car) {
    return car.engine.visit(
        [](const auto& engine) -> const engine::SparkPlan& { return engine.spark; });
}

bool is_driven(const vehicle::Balance& balance) {
    return balance.manifold().pressure >= least_manifold * balance.surroundings().ambient_pressure;
}

/// Whether less throttle leaves more margin there, the air being balanced: a diagonal entry of the
/// inverse is the reciprocal of the slope with all else solved.
bool holding_back_helps(const numerics::Matrix& jacobian, std::size_t held_back) {
    const auto k = static_cast<Eigen::Index>(held_back);
    const numerics::Vector unit = numerics::Vector::Unit(jacobian.rows(), k);
    const numerics::Vector column = Eigen::PartialPivLU<numerics::Matrix>(jacobian).solve(unit);
    return column[k] > 0;
}

/// Where the spark will be where it is held, rad, from what is left at an open throttle.
double guess_retard(const engine::SparkPlan& plan, const engine::Spark& open) {
    const double lacking = plan.wanted_margin(open.spread) - open.margin_at_best();
    const double rest = lacking - engine::octane_per_radian * engine::richer_from;
    return std::clamp(engine::richer_from + rest / octane_with_mixture, 0.0, plan.most_retard);
}

}  // namespace

/// Air, spark, mixture and opening in one solve. Nothing where Newton's method does not arrive, or
/// arrives where a wider throttle would hold the margin as well: then the openings are searched.
std::optional<Point> PointSolver::hold_at_once(const vehicle::OperatingCondition& condition,
                                               double first_retard, double first_held_back,
                                               int most_evaluations) {
    const std::array start = state_.unknowns;
    const std::size_t air = balance_.unknowns().size();
    knock_.ask(condition.opening, first_held_back, first_retard);
    balance_.attach(knock_);
    balance_.hold(condition, what_if_);
    Outcome outcome =
        close_held_back({state_.unknowns.data(), balance_.unknowns().size()}, most_evaluations);
    balance_.detach();
    evaluations_ += outcome.evaluations;
    state_.knocked = outcome.status == Status::solved;
    if (!state_.knocked) {
        std::copy_n(start.begin(), air, state_.unknowns.begin());
        return std::nullopt;
    }
    if (balance_.condition().opening < condition.opening * (1 - held_back_at_all))
        outcome.status = Status::knock_limited;
    else
        balance_.set_opening(condition.opening);
    return describe(outcome, state_.unknowns[knock_.retard()]);
}

Outcome PointSolver::close_held_back(std::span<double> x, int most_evaluations) {
    if (!state_.knocked) {
        knock_.guess(balance_, x);
        state_.knock_jacobian.known = false;
    }
    const double& held_back = x[knock_.held_back()];
    const double before = held_back;
    Outcome outcome = newton(x, state_.knock_jacobian, most_evaluations);
    const bool plausible =
        run_away(balance_).empty() && (held_back <= held_back_at_all || is_driven(balance_));
    const bool on_branch = std::abs(held_back - before) < near ||
                           holding_back_helps(state_.knock_jacobian.value, knock_.held_back());
    if (!plausible || !on_branch) outcome.status = Status::not_converged;
    return outcome;
}

std::optional<Point> PointSolver::hold_warm(const vehicle::OperatingCondition& condition) {
    return hold_at_once(condition, state_.unknowns[knock_.retard()], 0, try_evaluations);
}

/// From an open throttle where the spark can be expected to do, else from where most plates begin
/// to throttle; and then the other way.
std::optional<Point> PointSolver::hold_from_cold(const vehicle::OperatingCondition& condition,
                                                 const engine::Spark& open) {
    const engine::SparkPlan& plan = plan_of(balance_.vehicle());
    const double retard = guess_retard(plan, open);
    const bool enough = retard < plan.most_retard;
    const std::array guesses{enough ? 0 : begins_to_throttle, enough ? begins_to_throttle : 0};
    for (const double guess : guesses)
        if (const auto held = hold_at_once(condition, retard, guess, try_evaluations)) return held;
    return std::nullopt;
}

/// Held with a spark of one's choice, rad, and the mixture that goes with it.
Point PointSolver::at_spark(const vehicle::OperatingCondition& condition, double retard) {
    balance_.hold(condition, what_if_);
    vehicle::enrich(balance_, retard);
    const Outcome outcome = balance_air();
    return outcome.answered() ? describe(outcome, retard) : describe(outcome);
}

/// Held with the latest spark in range, sought from a guess in rad: by secants, the first as if a
/// spark moved nothing else. Where a `glance` is enough, until it is plain on which side of the
/// wanted margin it ends.
Point PointSolver::at_latest_spark(const vehicle::OperatingCondition& condition, double guess,
                                   bool glance) {
    const engine::SparkPlan& plan = plan_of(balance_.vehicle());
    double latest = guess, slope = -1, last = 0, last_left = 0;
    Point point = at_spark(condition, latest);
    for (int round = 0; round < most_rounds && point.outcome.answered(); ++round) {
        const double left = vehicle::spark_left(balance_, latest);
        const double plain = glance ? std::abs(plan.spare(point.spark)) / far_off : 0;
        if (std::abs(left) < std::max(plain, spark_tolerance)) break;
        if (round > 0 && latest != last)
            slope = std::clamp((left - last_left) / (latest - last), steepest, flattest);
        last = latest;
        last_left = left;
        latest = std::max(0.0, latest - left / slope);
        point = at_spark(condition, latest);
        if (latest == 0) break;
    }
    return point;
}

/// The spark that leaves the wanted margin with nothing held back, by brackets up to a later one
/// that leaves more.
Point PointSolver::search_spark(const vehicle::OperatingCondition& condition, double later) {
    const engine::SparkPlan& plan = plan_of(balance_.vehicle());
    const auto excess = [&](double retard) {
        return plan.spare(at_spark(condition, retard).spark);
    };
    const auto held = numerics::find_root(excess, 0, later, {spark_precision, 0, 80});
    const auto closed = hold_at_once(condition, held.x, 0, close_evaluations);
    return closed ? *closed : at_spark(condition, held.x);
}

/// From the nearly shut throttle where the search ended, the next point is better sought anew.
Point PointSolver::nothing_holds(const vehicle::OperatingCondition& asked, Point point) {
    state_.warm = false;
    point.condition = asked;
    point.outcome.status = Status::no_survivable_state;
    point.outcome.worst = always_knocks;
    return point;
}

/// The highest opening that holds the margin, by brackets; the hold closes what they leave.
Point PointSolver::search_opening(vehicle::OperatingCondition condition) {
    const vehicle::OperatingCondition asked = condition;
    const engine::SparkPlan& plan = plan_of(balance_.vehicle());
    Point point;
    double latest = plan.most_retard;
    const auto excess = [&](double opening) {
        condition.opening = opening;
        point = at_latest_spark(condition, latest, true);
        if (!point.outcome.answered()) return -1e3;
        latest = point.spark.retard;  // from there at the next opening
        return plan.spare(point.spark);
    };
    // Downwards in steps: a nearly shut throttle before a blower makes the charge hot, so the
    // margin may be lost again further down.
    double high = condition.opening, above = excess(high);
    if (above >= 0) return search_spark(asked, point.spark.retard);
    double low = high, below = above;
    while (below < 0) {
        high = low;
        above = below;
        low *= opening_step;
        below = excess(low);
        if (below < 0 && (low < smallest_opening || !is_driven(balance_)))
            return nothing_holds(asked, point);
    }
    const auto held =
        numerics::find_root(excess, {low, high, below, above}, {opening_tolerance, 0, 60});
    excess(std::max(low, held.x - opening_tolerance));
    if (!point.outcome.answered()) return point;
    if (!is_driven(balance_)) return nothing_holds(asked, point);
    const vehicle::OperatingCondition bracketed = point.condition;
    knock_.ask(asked.opening, std::log(asked.opening / condition.opening), point.spark.retard);
    knock_.guess(balance_, state_.unknowns);
    state_.knock_jacobian.known = false;
    state_.knocked = true;
    const auto closed = hold_at_once(asked, point.spark.retard, 0, close_evaluations);
    if (closed && std::abs(closed->condition.opening / condition.opening - 1) < near)
        return *closed;
    point = at_latest_spark(bracketed, latest, false);
    point.outcome.status = Status::knock_limited;
    return point;
}

}  // namespace windwall::solve
