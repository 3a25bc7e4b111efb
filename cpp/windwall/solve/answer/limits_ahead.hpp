#pragma once
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/results/limit_ahead.hpp"

#include <vector>

namespace windwall::solve {

/// The limits that a vehicle would pass by going faster, the nearest first: where the points solved
/// beyond the equilibrium in its gear first pass them, up to the rev limit. What bounds the road
/// speed itself is told to any speed, for a longer gearing.
std::vector<LimitAhead> limits_ahead(const TopSpeed& found, const LimitWatch& watch);

}  // namespace windwall::solve
