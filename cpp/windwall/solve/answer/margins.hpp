#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/margins.hpp"

namespace windwall::solve {

/// What is left at a pull of a vehicle.
Margins margins(const vehicle::Vehicle& vehicle, const FullThrottlePoint& pull);

}  // namespace windwall::solve
