#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/margins.hpp"

namespace windwall::solve {

/// What is left at a full-throttle point of a vehicle.
Margins margins(const vehicle::Vehicle& vehicle, const FullThrottlePoint& full_throttle);

}  // namespace windwall::solve
