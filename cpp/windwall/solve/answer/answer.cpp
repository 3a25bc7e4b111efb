#include "windwall/solve/answer/answer.hpp"

#include "windwall/solve/answer/belt_cautions.hpp"
#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/answer/cautions.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/answer/limits_ahead.hpp"
#include "windwall/solve/answer/margins.hpp"
#include "windwall/solve/answer/pump_watch.hpp"
#include "windwall/solve/answer/sensitivity.hpp"
#include "windwall/solve/answer/without_spray.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/solve/results/describe.hpp"

#include <algorithm>
#include <iterator>

namespace windwall::solve {
namespace {

/// How it ended, and where the vehicle moves, what it has there.
TopSpeedResult summarise(const TopSpeed& found, const vehicle::Vehicle& vehicle) {
    TopSpeedResult result;
    result.ending = ending(found.outcome);
    result.ending.evaluations = found.evaluations;
    result.points = found.points;
    result.limited_by = binding(found.equilibrium);
    result.unanswered = unanswered(found);
    result.run_up = found.run_up;
    if (!found.equilibrium.full_throttle) return result;
    const FullThrottlePoint& full_throttle = *found.equilibrium.full_throttle;
    result.speed = found.equilibrium.road_speed;
    result.gear = static_cast<long>(found.equilibrium.gear) + 1;
    result.engine_speed = full_throttle.point.condition.engine_speed;
    result.opening = full_throttle.point.condition.opening;
    result.excess_force = full_throttle.excess_force();
    result.belt = belt_position(vehicle, full_throttle.gear_state());
    result.next = next_binding(found.equilibrium, vehicle);
    return result;
}

/// Solves the equilibrium once more, so that its stations are there to be read.
FullThrottlePoint describe_equilibrium(VehicleSolver& solver, const TopSpeed& found,
                                       TopSpeedResult& result) {
    const FullThrottlePoint& there = *found.equilibrium.full_throttle;
    FullThrottlePoint full_throttle =
        solver.at({there.point.condition.engine_speed, there.gear_state()});
    describe(solver.point_solver().balance(), full_throttle, result.point.emplace());
    result.margin_without_spray = margin_without_spray(solver.vehicle(), full_throttle);
    return full_throttle;
}

std::vector<AccountEntry> lines(Account account) {
    account.entries.insert(account.entries.begin(), std::move(account.total));
    return std::move(account.entries);
}

void explain_equilibrium(const vehicle::Vehicle& vehicle, const TopSpeed& found,
                         TopSpeedResult& result) {
    VehicleSolver solver(vehicle);
    const FullThrottlePoint full_throttle = describe_equilibrium(solver, found, result);
    const vehicle::Balance& balance = solver.point_solver().balance();
    HeatAccount heat = heat_account(balance, full_throttle);
    result.margins = margins(vehicle, full_throttle);
    result.shaft = lines(shaft_account(balance, full_throttle));
    result.exhaust_temperature = heat.exhaust_temperature;
    std::ranges::move(point_cautions(balance, full_throttle.point, *result.point),
                      std::back_inserter(result.cautions));
    std::ranges::move(heat_cautions(heat), std::back_inserter(result.cautions));
    std::ranges::move(slip_cautions(found, vehicle), std::back_inserter(result.cautions));
    std::ranges::move(belt_cautions(found, vehicle), std::back_inserter(result.cautions));
    result.heat = lines(std::move(heat.account));
}

/// Common practice about a result gives way to what somebody rates it for.
void drop_where_rated(std::vector<Caution>& cautions, const std::vector<Limit>& stated) {
    std::erase_if(cautions, [&](const Caution& caution) {
        return caution.about == CautionKind::late_heat &&
               std::ranges::count(stated, caution.address, &Limit::address);
    });
}

TopSpeedResult explained(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    LimitWatch watch(vehicle, stated);
    PumpWatch pumps(vehicle, watch);
    const TopSpeed found = top_speed(vehicle, {}, &pumps);
    TopSpeedResult result = summarise(found, vehicle);
    result.unrated = unrated(vehicle, stated);
    result.cautions = pumps.cautions();
    if (!found.outcome.answered()) return result;
    explain_equilibrium(vehicle, found, result);
    result.passed = passed_limits(found, watch);
    result.ahead = limits_ahead(found, watch);
    std::erase_if(result.ahead, [&](const LimitAhead& one) {  // in a lower gear it was
        return std::ranges::count(result.passed, one.address, &LimitViolation::address);
    });
    drop_where_rated(result.cautions, stated);
    result.sensitivities = sensitivities(vehicle, found.speed());
    return result;
}

TopSpeedResult told_briefly(const vehicle::Vehicle& vehicle) {
    const TopSpeed found = top_speed(vehicle);
    TopSpeedResult result = summarise(found, vehicle);
    if (!found.outcome.answered()) return result;
    VehicleSolver solver(vehicle);
    describe_equilibrium(solver, found, result);
    return result;
}

PointResult at(const vehicle::OperatingCondition& condition, const Outcome& outcome) {
    return {
        ending(outcome), condition.engine_speed, condition.road_speed, condition.opening, {}, {}};
}

PointResult explained(const vehicle::Vehicle& vehicle,
                      const vehicle::OperatingCondition& condition) {
    PointSolver point_solver(vehicle);
    const Point point = point_solver.at(condition);
    PointResult result = at(condition, point.outcome);
    if (!point.outcome.answered()) return result;
    describe(point_solver.balance(), point, result.point.emplace());
    result.cautions = point_cautions(point_solver.balance(), point, *result.point);
    std::ranges::move(second_balance(point_solver), std::back_inserter(result.cautions));
    return result;
}

template <class Ask>
TopSpeedResult guarded_speed(const vehicle::Vehicle& vehicle, Ask&& ask) {
    return guarded(ask, [&] { return summarise({.outcome = broken_off}, vehicle); });
}

}  // namespace

TopSpeedResult answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    return guarded_speed(vehicle, [&] { return explained(vehicle, stated); });
}

TopSpeedResult answer_speed_briefly(const vehicle::Vehicle& vehicle) {
    return guarded_speed(vehicle, [&] { return told_briefly(vehicle); });
}

PointResult answer_point(const vehicle::Vehicle& vehicle,
                         const vehicle::OperatingCondition& condition) {
    return guarded([&] { return explained(vehicle, condition); },
                   [&] { return at(condition, broken_off); });
}

}  // namespace windwall::solve
