#include "windwall/solve/top_speed.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

/// The verdict of the curves as a whole: the first point without an answer, or the summit's.
Verdict verdict_of(const TopSpeed& found) {
    for (const GearCurve& curve : found.curves) {
        if (!curve.answered()) return curve.unanswered().point.verdict;
    }
    if (found.summit.pull) return found.summit.pull->point.verdict;
    return {Status::no_balance, {}, 0, 0};
}

bool all_answered(const std::vector<GearCurve>& curves) {
    return std::all_of(curves.begin(), curves.end(),
                       [](const GearCurve& curve) { return curve.answered(); });
}

}  // namespace

TopSpeed top_speed(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                   const Observer& observer) {
    Puller puller(vehicle, what_if, observer);
    TopSpeed found;
    found.curves = gear_curves(puller);
    if (all_answered(found.curves)) {
        found.summit = climb(puller, found.curves);
        const bool moves = found.summit.pull.has_value();
        if (moves) found.curves[found.summit.gear].add(*found.summit.pull);
        if (moves && vehicle.goal.run_up) {
            found.run_up =
                run_up(puller, found.curves, found.summit.road_speed, *vehicle.goal.run_up);
        }
    }
    found.verdict = verdict_of(found);
    found.points = puller.solver().points();
    found.evaluations = puller.solver().evaluations();
    return found;
}

}  // namespace windwall::solve
