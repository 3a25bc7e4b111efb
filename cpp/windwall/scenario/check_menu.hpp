#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/upgrade.hpp"

#include <span>

namespace windwall::scenario {

/// The number of combinations that all choices of a menu may make.
inline constexpr std::size_t most_combinations = 256;

/// Complains where one upgrade decides the same value twice, or where the choices of the menu make
/// too many combinations.
void check_choices(const Menu& menu, std::span<const fields::Cursor> cursors);

/// Complains about every upgrade without problems that does not make, with what it requires, a
/// valid vehicle; each of its choices has to.
void check_resolved(const Menu& menu, std::span<const fields::Cursor> cursors,
                    std::span<const vehicle::Vehicle> layouts);

}  // namespace windwall::scenario
