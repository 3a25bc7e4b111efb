#pragma once
#include "windwall/scenario/scenario.hpp"

namespace windwall::scenario {

/// Takes from the menu what has just been fitted, what that excludes, and what would no longer make
/// a valid vehicle, together with all that requires one of the latter two.
void drop_impossible_upgrades(Scenario& scenario, UpgradeSet fitted);

/// Takes away limits on results that neither the vehicle nor any of its upgrades has.
void drop_impossible_limits(Scenario& scenario);

}  // namespace windwall::scenario
