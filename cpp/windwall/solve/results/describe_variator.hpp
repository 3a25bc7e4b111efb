#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/variator_result.hpp"

#include <optional>

namespace windwall::solve {

/// The belt drive at a solved point, its belt as warm as it gets there; nothing where all ratios
/// are fixed.
std::optional<VariatorResult> variator_result(const vehicle::Vehicle& vehicle,
                                              const FullThrottlePoint& full_throttle);

}  // namespace windwall::solve
