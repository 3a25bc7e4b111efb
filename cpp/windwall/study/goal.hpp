#pragma once
#include "windwall/study/rank.hpp"

namespace windwall::study {

/// What a vehicle lacks to a speed, found by solving again until it has it.
Missing missing_to(const vehicle::Vehicle& vehicle, double speed);

/// The sentences a ranking opens with: the base, first place at each anchor, and the goal.
std::vector<std::string> rank_sentences(const scenario::Scenario& scenario, const Ranking& ranking);

}  // namespace windwall::study
