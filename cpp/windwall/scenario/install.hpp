#pragma once
#include "windwall/scenario/choices.hpp"
#include "windwall/scenario/scenario.hpp"

#include <string>
#include <variant>

namespace windwall::scenario {

/// The vehicle with a set of upgrades fitted, or why that cannot be. A set has to hold what its
/// members require. Never throws; no text is read again.
std::variant<vehicle::Vehicle, std::string> install(const Scenario& scenario, UpgradeSet set,
                                                    const Choices& chosen = {});

}  // namespace windwall::scenario
