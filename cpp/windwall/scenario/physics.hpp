#pragma once
#include "windwall/scenario/scenario.hpp"

namespace windwall::scenario {

/// Everything a result can depend on, and nothing else: the vehicle, the upgrades, the limits, the
/// observations and the outings in SI with their sigmas, defaults written out, and the format's
/// version.
/// Titles, notes, reasons, and the units of files and screens are no part of it.
fields::Json physics_of(const Scenario& scenario);

}  // namespace windwall::scenario
