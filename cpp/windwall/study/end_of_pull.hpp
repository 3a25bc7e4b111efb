#pragma once
#include "windwall/study/ranking.hpp"
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What the sets that a ranking names have where their pull ends: the vehicle as it is, the best
/// for every price, the fastest, the target, the cheapest to the goal.
std::vector<EndOfPull> ends_of_pulls(const scenario::Scenario& scenario,
                                     const Considered& considered, const Ranking& ranking,
                                     const RankOptions& options);

}  // namespace windwall::study
