#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/invalid_addresses.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <span>
#include <vector>

namespace windwall::scenario {

/// Reads the limits of a file, {result address: {max, min, why}}. A part that a limit is put on
/// may come with an upgrade, so all layouts there can be are looked through.
std::vector<solve::Limit> read_limits(const fields::Cursor& limits,
                                      std::span<const vehicle::Vehicle> layouts,
                                      const InvalidAddresses& invalid);

}  // namespace windwall::scenario
