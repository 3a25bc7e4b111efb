#pragma once
#include "windwall/scenario/apply.hpp"
#include "windwall/scenario/scenario.hpp"

#include <functional>
#include <string>
#include <variant>
#include <vector>

namespace windwall::scenario {

/// The vehicle with a set of upgrades fitted, or why that cannot be. A set has to hold what its
/// members require. Never throws; no text is read again.
std::variant<vehicle::Vehicle, std::string> install(const Scenario& scenario, UpgradeSet set,
                                                    const Choices& chosen = {});

/// How many values each open choice of a set has, in the order of the menu.
std::vector<std::size_t> open_choices(const Menu& menu, UpgradeSet set);

/// Tries every combination of the open choices of a set and returns the fastest; the first of
/// equals, and all firsts where nothing is open or none has a speed. `speed` gives NaN for a
/// vehicle without one.
using ChoiceSpeed = std::function<double(const vehicle::Vehicle& fitted, const Choices& chosen)>;
Choices resolve_choice(const Scenario& scenario, UpgradeSet set, const ChoiceSpeed& speed);

}  // namespace windwall::scenario
