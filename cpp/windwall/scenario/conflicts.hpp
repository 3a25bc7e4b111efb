#pragma once
#include "windwall/scenario/apply.hpp"

namespace windwall::scenario {

/// Finds what two upgrades that may stand together would both decide: the same value set by both,
/// the same part replaced or inserted by both, or one reaching into a part the other removes. The
/// fault is the later one's. No more are told than a file has problems.
Faults find_conflicts(const Menu& menu);

}  // namespace windwall::scenario
