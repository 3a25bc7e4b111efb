#pragma once
#include "windwall/fields/provenance.hpp"
#include "windwall/vehicle/vehicle.hpp"

namespace windwall::scenario {

/// What the builder writes behind the ± of the knock anchor is what the chance of knock is counted
/// from; without it the engine has a spread of its own.
void apply_anchor_sigma(vehicle::Vehicle& vehicle, const fields::Provenance& notes);

}  // namespace windwall::scenario
