#include "windwall/solve/answer/answer.hpp"

#include "windwall/solve/answer/cautions.hpp"
#include "windwall/solve/answer/reason.hpp"
#include "windwall/solve/results/describe.hpp"

#include <algorithm>
#include <iterator>

namespace windwall::solve {
namespace {

SpeedAnswer find_equilibrium_speed(const vehicle::Vehicle& vehicle, const Observer& observer) {
    SpeedAnswer answer;
    answer.found = top_speed(vehicle, {}, observer);
    answer.sentence = sentence(answer.found, vehicle);
    answer.limited_by = limited_by(answer.found.equilibrium);
    return answer;
}

/// Solves the equilibrium once more, so that its stations are there to be read.
FullThrottlePoint describe_summit(VehicleSolver& solver, SpeedAnswer& answer) {
    const FullThrottlePoint& there = *answer.found.equilibrium.pull;
    FullThrottlePoint pull = solver.at({there.point.condition.engine_speed, there.gear_state()});
    describe(solver.point_solver().balance(), pull, answer.point.emplace());
    return pull;
}

void explain_summit(const vehicle::Vehicle& vehicle, SpeedAnswer& answer) {
    VehicleSolver solver(vehicle);
    const FullThrottlePoint pull = describe_summit(solver, answer);
    const vehicle::Balance& balance = solver.point_solver().balance();
    answer.margins = margins(vehicle, pull);
    answer.shaft = shaft_account(balance, pull);
    answer.heat = heat_account(balance, pull);
    answer.cautions = point_cautions(balance, pull.point);
    std::ranges::move(heat_cautions(*answer.heat), std::back_inserter(answer.cautions));
    std::ranges::move(slip_cautions(answer.found, vehicle), std::back_inserter(answer.cautions));
    answer.gearing = gearing(vehicle, pull.gear_state());
    answer.next = next_to_bind(answer.found.equilibrium, vehicle);
}

}  // namespace

SpeedAnswer answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    LimitWatch watch(vehicle, stated);
    SpeedAnswer answer = find_equilibrium_speed(
        vehicle, [&](const vehicle::Balance& balance, FullThrottlePoint& pull) {
            watch.read(balance, pull, pull.watched);
        });
    answer.unrated = unrated(vehicle);
    if (!answer.found.outcome.answered()) return answer;
    explain_summit(vehicle, answer);
    answer.passed = passed_limits(answer.found, watch);
    answer.sensitivities = sensitivities(vehicle, answer.found.speed());
    return answer;
}

SpeedAnswer answer_speed_briefly(const vehicle::Vehicle& vehicle) {
    SpeedAnswer answer = find_equilibrium_speed(vehicle, {});
    if (!answer.found.outcome.answered()) return answer;
    VehicleSolver solver(vehicle);
    describe_summit(solver, answer);
    return answer;
}

PointAnswer answer_point(const vehicle::Vehicle& vehicle, const vehicle::Condition& condition) {
    PointSolver point_solver(vehicle);
    PointAnswer answer;
    answer.point = point_solver.at(condition);
    answer.sentence = sentence(answer.point);
    if (answer.point.outcome.answered()) {
        describe(point_solver.balance(), answer.point, answer.result.emplace());
        answer.cautions = point_cautions(point_solver.balance(), answer.point);
    }
    return answer;
}

}  // namespace windwall::solve
