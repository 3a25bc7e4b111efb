#pragma once
#include "windwall/study/allowed_sets.hpp"
#include "windwall/study/solved_sets.hpp"

#include <functional>

namespace windwall::study {

/// Fills in what each upgrade is worth beside the others, from sets that are solved already.
/// `counts` says of a set whether it may be named at all.
void add_partners(const Relations& relations, const SolvedSets& solved,
                  const std::function<bool(const SetResult&)>& counts,
                  std::vector<UpgradeGain>& gains);

}  // namespace windwall::study
