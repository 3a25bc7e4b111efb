#pragma once
#include "windwall/solve/climb.hpp"

namespace windwall::solve {

/// Solves for the end of one gear's surplus, which the curves put near a place along its sweep
/// between two others: a balance of true thrust and road load to 1e-7 of the engine speed, or the
/// rev limit where there is surplus left at it.
Summit summit_near(Puller& puller, const EngineCurve& engine, std::size_t gear, double along);

}  // namespace windwall::solve
