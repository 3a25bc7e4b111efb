#pragma once
#include "windwall/study/rank.hpp"

#include <limits>

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

/// How many sets each group of a ranking holds that is solved together; none where it is refused.
std::vector<std::size_t> sizes_of_groups(const scenario::Scenario& scenario,
                                         const RankOptions& options);

/// Groups by number, from the first to the one before the last.
struct Groups {
    std::size_t first = 0;
    std::size_t last = std::numeric_limits<std::size_t>::max();
};

/// Solves all allowed sets of these groups on all cores; fewer where the caller stops it.
std::vector<SetResult> solve_sets(const scenario::Scenario& scenario, const Considered& considered,
                                  const RankOptions& options, const Groups& which = {});

}  // namespace windwall::study
