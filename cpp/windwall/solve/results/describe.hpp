#pragma once
#include "windwall/solve/pull.hpp"
#include "windwall/solve/results.hpp"

namespace windwall::solve {

/// Writes down what was just solved, the engine alone. `balance` must be where the point left it.
/// Into a point that was used before nothing is allocated.
void describe(const vehicle::Balance& balance, const Point& point, OperatingPoint& into);

/// The same with what reached the road.
void describe(const vehicle::Balance& balance, const Pull& pull, OperatingPoint& into);

}  // namespace windwall::solve
