#pragma once
#include "windwall/solve/full_throttle/tractive_effort_curve.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

/// Why the vehicle stops getting faster.
enum class StopReason {
    balance,      // drag, rolling and slope take the whole thrust
    rev_limit,    // the engine may not turn faster, and no higher gear has thrust left over
    grip,         // the tyres hold no more thrust, and the road takes all of it
    torque_step,  // the torque falls away at once, and with it more than was left
    no_answer,    // the engine has no answer at a higher speed
    standstill    // no gear takes the vehicle to where its clutch stops slipping
};

/// Where the climb from standstill ends.
struct EquilibriumSpeed {
    StopReason stop = StopReason::standstill;
    double road_speed = 0;
    std::size_t gear = 0;
    std::optional<FullThrottlePoint> full_throttle;  // solved there; empty at standstill
    bool settled = true;  // false: gears still took turns when it was given up
};

/// Goes up from standstill through all gears: on in the gear in use until its excess force ends,
/// then in any other that has excess force there, until none has. Every round is faster than the
/// one before or puts a gear aside. A balance beyond a gap that no gear crosses is not reachable
/// from below and is not found. The way is found on the curves, its end on solved points, and the
/// curve of the last gear is made to pass through that end.
EquilibriumSpeed find_equilibrium_speed(VehicleSolver& solver, const FullLoadCurve& engine,
                                        std::vector<TractiveEffortCurve>& curves);

/// The speed at its end as the curves alone say, m/s: to a few parts in a thousand, and nothing is
/// solved for it.
double speed_on_curves(VehicleSolver& solver, const FullLoadCurve& engine,
                       std::vector<TractiveEffortCurve>& curves);

}  // namespace windwall::solve
