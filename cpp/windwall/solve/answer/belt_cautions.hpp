#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/caution.hpp"

#include <vector>

namespace windwall::solve {

/// About a belt drive of variable ratio that cannot shift through all that it is said to, since its
/// sheave stops before or the engine may not turn as fast, and of one that grips at idle.
std::vector<Caution> belt_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle);

}  // namespace windwall::solve
