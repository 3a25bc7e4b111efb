#pragma once
#include "windwall/study/ranking.hpp"
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {

/// The upgrades that gain most alone, the most first; of equal gains the cheapest. None that cannot
/// be paid for with what it requires, and none whose gain is one to where answers end.
std::vector<std::size_t> leaders(const Considered& considered, const Ranking& ranking,
                                 const RankOptions& options);

/// What the ignition delay of the end gas makes of the sets that a reader looks at first: the
/// vehicle as it is, the leaders with and without themselves, the target, the cheapest to the goal.
/// Nothing where the engine has no second opinion.
std::vector<SecondOpinion> second_opinions(const scenario::Scenario& scenario,
                                           const Considered& considered, const Ranking& ranking,
                                           const RankOptions& options);

}  // namespace windwall::study
