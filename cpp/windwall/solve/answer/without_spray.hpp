#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <optional>

namespace windwall::solve {

/// The knock margin that is left the moment every jet is blocked or its pump stops, octane numbers:
/// engine and road speed, throttle, spark and jets of the fuel stay as they are. Empty where
/// nothing sprays, where the engine says nothing of knock, and where nothing balances then.
std::optional<double> margin_without_spray(const vehicle::Vehicle& vehicle,
                                           const FullThrottlePoint& full_throttle);

}  // namespace windwall::solve
