#pragma once
#include "windwall/study/rank.hpp"

namespace windwall::study {

/// The upgrades a ranking looks at, by number in the menu, and how they relate.
struct Considered {
    std::vector<std::size_t> upgrades;
    Relations relations;
};

/// Those named, or the whole menu; upgrades that need one left out are left out too.
Considered consider(const scenario::Scenario& scenario, const RankOptions& options);

scenario::UpgradeSet in_menu(const Considered& considered, Set set);

/// Sets of the menu by number, together where they hold the same upgrades of the engine, as far as
/// that leaves work for every thread.
std::vector<std::vector<std::size_t>> by_engine(const scenario::Scenario& scenario,
                                                const std::vector<scenario::UpgradeSet>& sets);

/// Solves all allowed sets on all cores; fewer where the caller stops it.
std::vector<SetResult> solve_sets(const scenario::Scenario& scenario, const Considered& considered,
                                  const RankOptions& options);

}  // namespace windwall::study
