#include "windwall/solve/full_throttle/find_equilibrium_speed.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/equilibrium_near.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double no_excess_force = 1e-6;  // N
constexpr double no_gain = 1e-9;          // of the speed

double excess_force(const VehicleSolver& solver, const TractiveEffortCurve& curve,
                    double road_speed) {
    return curve.thrust(road_speed) - solver.load(road_speed).total();
}

/// Where the curve of one gear meets the road load, going up from a speed, or its end.
CurvePoint end_of(const VehicleSolver& solver, const TractiveEffortCurve& curve, double from) {
    const auto& samples = curve.samples();
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const CurvePoint &below = samples[i], &above = samples[i + 1];
        if (above.road_speed <= from || above.excess_force > 0) continue;
        const double start = std::max(from, below.road_speed);
        const auto excess = [&](double speed) { return excess_force(solver, curve, speed); };
        const auto root = numerics::find_root(excess, start, above.road_speed, {0, 1e-7, 60});
        const double share = (root.x - below.road_speed) / (above.road_speed - below.road_speed);
        return {below.along + share * (above.along - below.along), root.x, 0, 0, true, false};
    }
    return samples.back();
}

/// The gear with the largest excess force at a speed that it can still exceed, if any.
TractiveEffortCurve* onward(const VehicleSolver& solver, std::vector<TractiveEffortCurve>& curves,
                            double road_speed, const TractiveEffortCurve* used) {
    TractiveEffortCurve* best = nullptr;
    double most = no_excess_force;
    for (TractiveEffortCurve& curve : curves) {
        if (&curve == used || !curve.reaches(road_speed)) continue;
        // Below its lowest sample the clutch slips: a gear is of use only if it gets through that.
        const bool slipping = road_speed < curve.low_speed();
        if (slipping && curve.samples().front().excess_force <= no_excess_force) continue;
        const double here = excess_force(solver, curve, road_speed);
        if (here > most) {
            most = here;
            best = &curve;
        }
    }
    return best;
}

/// Up through the gears on the curves alone, to where no gear has excess force.
CurvePoint follow(const VehicleSolver& solver, std::vector<TractiveEffortCurve>& curves,
                  double from, TractiveEffortCurve*& gear) {
    CurvePoint end = end_of(solver, *gear, from);
    while (TractiveEffortCurve* next = onward(solver, curves, end.road_speed, gear)) {
        const CurvePoint further = end_of(solver, *next, end.road_speed);
        if (further.road_speed <= end.road_speed * (1 + no_gain)) break;
        end = further;
        gear = next;
    }
    return end;
}

}  // namespace

EquilibriumSpeed find_equilibrium_speed(VehicleSolver& solver, const FullLoadCurve& engine,
                                        std::vector<TractiveEffortCurve>& curves) {
    EquilibriumSpeed equilibrium;
    TractiveEffortCurve* gear = onward(solver, curves, 0, nullptr);
    while (gear != nullptr) {
        const CurvePoint end = follow(solver, curves, equilibrium.road_speed, gear);
        if (equilibrium.pull && end.road_speed <= equilibrium.road_speed * (1 + no_gain)) break;
        equilibrium = equilibrium_near(solver, engine, gear->gear(), end.along);
        if (!equilibrium.pull->point.outcome.answered()) break;
        gear->pass_through(*equilibrium.pull);
        gear = onward(solver, curves, equilibrium.road_speed, gear);
    }
    return equilibrium;
}

}  // namespace windwall::solve
