#pragma once
#include "windwall/fields/provenance.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <string_view>

namespace windwall::scenario {

/// The address of the octane number that an engine asks for at its anchor.
inline constexpr std::string_view knock_anchor = "engine/knock_anchor/octane_number";

/// What the builder writes behind the ± of the knock anchor is what the chance of knock is counted
/// from; without it the engine has a spread of its own.
void apply_anchor_sigma(vehicle::Vehicle& vehicle, const fields::Provenance& notes);

/// One standard deviation of a vehicle's knock anchor, octane numbers; 0 where its engine knows
/// nothing of knock.
double anchor_spread(const vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario
