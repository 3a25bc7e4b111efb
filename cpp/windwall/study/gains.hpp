#pragma once
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What each upgrade adds alone, last, by its fair share of the target's gain and beside others.
std::vector<UpgradeGain> gains_of_each(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking,
                                       const RankOptions& options);

/// The upgrades that gain most alone, the most first; of equal gains the cheapest. None that cannot
/// be paid for with what it requires, and none whose gain is one to where answers end.
std::vector<std::size_t> leaders(const Considered& considered, const Ranking& ranking,
                                 const RankOptions& options);

}  // namespace windwall::study
