#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"
#include "windwall/vehicle/outing/outing.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <vector>

namespace windwall::scenario {

inline constexpr std::size_t most_outings = 16;

/// Reads the outings of a file, [{id, legs: [{kind, ...}], ...}]; legs are addressed by number. No
/// id is that of anything else in the file, upgrades included, and no gear of a launch one that the
/// vehicle has not.
std::vector<vehicle::Outing> read_outings(const fields::Cursor& list, const Menu& menu,
                                          const vehicle::Vehicle& vehicle);

/// What a drive depends on: everything but ids and titles.
fields::Json physics_of(const std::vector<vehicle::Outing>& outings,
                        const fields::Provenance& notes);

}  // namespace windwall::scenario
