#pragma once
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What each upgrade adds alone, last, by its fair share of the target's gain and beside others.
std::vector<UpgradeGain> gains_of_each(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking,
                                       const RankOptions& options);

}  // namespace windwall::study
