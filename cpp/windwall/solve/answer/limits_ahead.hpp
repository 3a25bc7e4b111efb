#pragma once
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/results/limit_ahead.hpp"

#include <vector>

namespace windwall::solve {

/// The limits that a vehicle would pass by going faster, the nearest first: each goes on by the
/// straight line of the last of the way up in the same gear, as far as the engine turns or that
/// line says anything. At the rev limit a longer gearing alone goes faster, and only what goes by
/// the road is told.
std::vector<LimitAhead> limits_ahead(const TopSpeed& found, const LimitWatch& watch,
                                     const vehicle::Vehicle& vehicle);

}  // namespace windwall::solve
