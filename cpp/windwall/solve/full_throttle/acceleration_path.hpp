#pragma once
#include "windwall/solve/top_speed.hpp"

#include <vector>

namespace windwall::solve {

/// The solved pulls that a run to the summit goes through, in the order of their speed: each gear
/// while no other pushes harder, the last one from its slowest pull, and the summit.
std::vector<const Pull*> way_up(const TopSpeed& found);

/// The least knock margin on the way up, octane numbers.
double least_margin(const TopSpeed& found);

}  // namespace windwall::solve
