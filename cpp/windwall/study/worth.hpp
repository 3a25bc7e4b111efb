#pragma once
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What each upgrade is worth alone, last and by its fair share of the target's gain.
std::vector<UpgradeWorth> worth_of_each(const Considered& considered, const Ranking& ranking);

}  // namespace windwall::study
