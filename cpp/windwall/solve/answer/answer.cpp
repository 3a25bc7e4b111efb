#include "windwall/solve/answer.hpp"

#include "windwall/solve/cautions.hpp"
#include "windwall/solve/describe.hpp"
#include "windwall/solve/reason.hpp"

#include <algorithm>
#include <iterator>

namespace windwall::solve {
namespace {

SpeedAnswer climb(const vehicle::Vehicle& vehicle, const Observer& observer) {
    SpeedAnswer answer;
    answer.found = top_speed(vehicle, {}, observer);
    answer.sentence = sentence(answer.found, vehicle);
    answer.limited_by = limited_by(answer.found.summit);
    return answer;
}

/// Solves the summit once more, so that its stations are there to be read.
Pull describe_summit(Puller& puller, SpeedAnswer& answer) {
    const Pull& there = *answer.found.summit.pull;
    Pull pull = puller.at({there.point.condition.engine_speed, there.stance()});
    describe(puller.solver().balance(), pull, answer.point.emplace());
    return pull;
}

void explain_summit(const vehicle::Vehicle& vehicle, SpeedAnswer& answer) {
    Puller puller(vehicle);
    const Pull pull = describe_summit(puller, answer);
    const vehicle::Balance& balance = puller.solver().balance();
    answer.margins = margins(vehicle, pull);
    answer.shaft = shaft_account(balance, pull);
    answer.heat = heat_account(balance, pull);
    answer.cautions = point_cautions(balance, pull.point);
    std::ranges::move(heat_cautions(*answer.heat), std::back_inserter(answer.cautions));
    std::ranges::move(slip_cautions(answer.found, vehicle), std::back_inserter(answer.cautions));
    answer.gearing = gearing(vehicle, pull.stance());
    answer.next = next_to_bind(answer.found.summit, vehicle);
}

}  // namespace

SpeedAnswer answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    LimitWatch watch(vehicle, stated);
    SpeedAnswer answer = climb(vehicle, [&](const vehicle::Balance& balance, Pull& pull) {
        watch.read(balance, pull, pull.watched);
    });
    answer.unrated = unrated(vehicle);
    if (!answer.found.verdict.answered()) return answer;
    explain_summit(vehicle, answer);
    answer.passed = passed_limits(answer.found, watch);
    answer.sensitivities = sensitivities(vehicle, answer.found.speed());
    return answer;
}

SpeedAnswer answer_speed_briefly(const vehicle::Vehicle& vehicle) {
    SpeedAnswer answer = climb(vehicle, {});
    if (!answer.found.verdict.answered()) return answer;
    Puller puller(vehicle);
    describe_summit(puller, answer);
    return answer;
}

PointAnswer answer_point(const vehicle::Vehicle& vehicle, const vehicle::Condition& condition) {
    PointSolver solver(vehicle);
    PointAnswer answer;
    answer.point = solver.at(condition);
    answer.sentence = sentence(answer.point);
    if (answer.point.verdict.answered()) {
        describe(solver.balance(), answer.point, answer.result.emplace());
        answer.cautions = point_cautions(solver.balance(), answer.point);
    }
    return answer;
}

}  // namespace windwall::solve
