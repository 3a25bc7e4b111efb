#pragma once
#include "windwall/scenario/upgrade.hpp"

#include <functional>
#include <string>

namespace windwall::scenario {

/// Called with the later upgrade of a pair, its action that gets in the way of the earlier one, and
/// why.
using ConflictComplaint = std::function<void(std::size_t, Verb, std::size_t, std::string)>;

/// Finds what two upgrades that may stand together would both decide: the same value set by both,
/// the same part replaced or inserted by both, or one reaching into a part the other removes.
void find_conflicts(const Menu& menu, const ConflictComplaint& complain);

}  // namespace windwall::scenario
