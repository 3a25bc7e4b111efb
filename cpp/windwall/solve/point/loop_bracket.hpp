#pragma once
#include "windwall/solve/point/outcome.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <span>

namespace windwall::solve {

/// The air balance by brackets where gas goes round through bypasses: the path in series is solved
/// for a share that returns, its heat is settled by repetition, and the share is bracketed, from a
/// shut bypass upwards. Where an opening valve lowers the very pressure that opens it, several
/// balances may stand; the one with the least return is taken, as met on closing the throttle.
/// Without a bypass it is `bracket_series`. Leaves the unknowns in x and the stations in the
/// balance. After `budget` calls it is given up as not converged.
Outcome bracket_network(vehicle::Balance& balance, std::span<double> x, int budget);

}  // namespace windwall::solve
