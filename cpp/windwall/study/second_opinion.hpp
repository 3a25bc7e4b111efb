#pragma once
#include "windwall/study/ranking.hpp"
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// What the ignition delay of the end gas makes of the sets that a reader looks at first: the
/// vehicle as it is, the leaders with and without themselves, the target, the cheapest to the goal.
/// Nothing where the engine has no second opinion.
std::vector<SecondOpinion> opinions_of(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking,
                                       const RankOptions& options);

}  // namespace windwall::study
