#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/operating_point.hpp"

namespace windwall::solve {

/// Writes down what was just solved, the engine alone. `balance` must be where the point left it.
/// Into a point that was used before nothing is allocated.
void describe(const vehicle::Balance& balance, const Point& point, OperatingPoint& into);

/// The same with what reached the road.
void describe(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle,
              OperatingPoint& into);

}  // namespace windwall::solve
