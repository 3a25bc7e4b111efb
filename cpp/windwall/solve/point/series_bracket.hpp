#pragma once
#include "windwall/solve/point/outcome.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <span>

namespace windwall::solve {

/// The air balance by brackets inside brackets, for starts from which Newton's method does not
/// arrive. Slow (some thousand calls) and sure: on a path in series a larger flow leaves a lower
/// manifold pressure, so the engine's balance has one sign change per branch, and the branch with
/// the largest flow is the one that exists with a blower that leaks. Where a valve is sonic the
/// flow is the valve's, and the pressure behind it is bracketed instead. Leaves the unknowns in x
/// and the stations in the balance. After `budget` calls it is given up as not converged.
Outcome bracket_series(vehicle::Balance& balance, std::span<double> x, int budget);

}  // namespace windwall::solve
