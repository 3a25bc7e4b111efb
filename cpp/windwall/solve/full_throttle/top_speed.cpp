#include "windwall/solve/top_speed.hpp"

namespace windwall::solve {
namespace {

void climb_and_run(Puller& puller, const EngineCurve& engine, TopSpeed& found) {
    const auto& run_up_length = puller.vehicle().goal.run_up;
    found.curves = gear_curves(engine, puller);
    found.summit = climb(puller, engine, found.curves);
    found.verdict = {Status::no_balance, {}, 0, 0};
    if (!found.summit.pull) return;
    found.verdict = found.summit.pull->point.verdict;
    if (found.verdict.answered() && run_up_length)
        found.run_up = run_up(puller, found.curves, start_gear(puller, engine),
                              found.summit.road_speed, *run_up_length);
}

}  // namespace

TopSpeed top_speed(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                   const Observer& observer) {
    Puller puller(vehicle, what_if, observer);
    TopSpeed found;
    const EngineCurve engine(puller);
    if (engine.answered()) {
        climb_and_run(puller, engine, found);
    } else {
        found.verdict = engine.unanswered().point.verdict;
    }
    found.pulls = engine.pulls();
    found.points = puller.solver().points();
    found.evaluations = puller.solver().evaluations();
    return found;
}

}  // namespace windwall::solve
