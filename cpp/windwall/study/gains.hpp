#pragma once
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What each upgrade adds alone, last and by its fair share of the target's gain.
std::vector<UpgradeGain> gains_of_each(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking);

}  // namespace windwall::study
