#pragma once
#include "windwall/solve/full_throttle/find_equilibrium_speed.hpp"

namespace windwall::solve {

/// Solves for the end of one gear's excess force, which the curves put near a place along its range
/// between two others: a balance of true thrust and road load to 1e-7 of the engine speed, or the
/// rev limit where there is excess force left at it.
EquilibriumSpeed equilibrium_near(VehicleSolver& solver, const FullLoadCurve& engine,
                                  std::size_t gear, double along);

}  // namespace windwall::solve
