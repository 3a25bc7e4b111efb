#pragma once
#include "windwall/scenario/scenario.hpp"
#include "windwall/study/batch.hpp"
#include "windwall/study/ranking.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::study {

/// Up to here all allowed sets are solved.
inline constexpr std::size_t most_ranked = 16;

struct RankOptions {
    std::optional<double> budget;                      // in the scenario's currency
    std::optional<std::vector<std::string>> upgrades;  // ids to consider; none: the whole menu
    BatchOptions batch;
    const std::vector<SetResult>* solved =
        nullptr;  // elsewhere, in rising order; else they are here
};

/// Solves every allowed set of the menu at three knock anchors and says what each upgrade adds.
Ranking rank(const scenario::Scenario& scenario, const RankOptions& options = {});

/// The upgrades of the scenario's menu that a set of a ranking holds.
scenario::UpgradeSet in_menu(const Ranking& ranking, Set set);

}  // namespace windwall::study
