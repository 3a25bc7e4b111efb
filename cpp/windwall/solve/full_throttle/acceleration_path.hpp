#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <vector>

namespace windwall::solve {

/// The solved full-throttle points that a run to the equilibrium goes through, in the order of
/// their speed: each gear while no other pushes harder, the last one from its slowest full-throttle
/// point, and the equilibrium.
std::vector<const FullThrottlePoint*> acceleration_path(const TopSpeed& found);

/// The least knock margin on the way up, octane numbers.
double least_margin(const TopSpeed& found);

}  // namespace windwall::solve
