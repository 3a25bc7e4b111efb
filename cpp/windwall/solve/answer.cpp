#include "windwall/solve/answer.hpp"

#include "windwall/solve/cautions.hpp"
#include "windwall/solve/describe.hpp"
#include "windwall/solve/reason.hpp"

namespace windwall::solve {
namespace {

/// Solves the summit once more, so that its stations are there to be read.
void explain_summit(const vehicle::Vehicle& vehicle, SpeedAnswer& answer) {
    const Summit& summit = answer.found.summit;
    Puller puller(vehicle);
    const Pull pull = puller.at({summit.pull->point.condition.engine_speed, summit.pull->stance()});
    const vehicle::Balance& balance = puller.solver().balance();
    describe(balance, pull, answer.point.emplace());
    answer.margins = margins(vehicle, pull);
    answer.shaft = shaft_account(balance, pull);
    answer.heat = heat_account(balance, pull);
    answer.cautions = point_cautions(balance, pull.point);
    for (Caution& caution : heat_cautions(*answer.heat)) {
        answer.cautions.push_back(std::move(caution));
    }
    answer.gearing = gearing(vehicle, summit.pull->stance());
    answer.next = next_to_bind(summit, vehicle);
}

}  // namespace

SpeedAnswer answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    SpeedAnswer answer;
    LimitWatch watch(vehicle, stated);
    answer.found = top_speed(vehicle, {}, [&](const vehicle::Balance& balance, Pull& pull) {
        watch.read(balance, pull, pull.watched);
    });
    answer.sentence = sentence(answer.found, vehicle);
    answer.limited_by = limited_by(answer.found.summit);
    answer.unrated = unrated(vehicle);
    if (!answer.found.verdict.answered()) return answer;
    explain_summit(vehicle, answer);
    answer.passed = passed_limits(answer.found, watch);
    answer.sensitivities = sensitivities(vehicle, answer.found.speed());
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
