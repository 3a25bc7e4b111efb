#pragma once
#include "windwall/solve/full_throttle/tractive_effort_curve.hpp"
#include "windwall/solve/results/run_up.hpp"

#include <vector>

namespace windwall::solve {

/// The gear to start in, by driveline::launch_gear for the engine's torque at the launch speed.
std::size_t start_gear(const VehicleSolver& solver, const FullLoadCurve& engine);

/// By the quadrature s(v) = integral of m v dv / (F - R), towards the speed `equilibrium` that full
/// throttle approaches or ends at. Where the gear to start in has no thrust to get to the end of
/// the slipping, it starts in the gear that accelerates most.
RunUp run_up(const VehicleSolver& solver, const std::vector<TractiveEffortCurve>& curves,
             std::size_t start_gear, double equilibrium, double distance);

}  // namespace windwall::solve
