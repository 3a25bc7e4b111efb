#pragma once
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/point/outcome.hpp"
#include "windwall/study/allowed_sets.hpp"
#include "windwall/study/batch.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace windwall::study {

/// The knock anchor is the number known worst, so every gain is given at three of them: at the one
/// stated, and with its octane number so much lower and higher.
inline constexpr std::size_t anchors = 3;
inline constexpr std::size_t middle = 1;

/// Up to here all allowed sets are solved.
inline constexpr std::size_t most_ranked = 16;

struct RankOptions {
    std::optional<double> budget;                      // in the scenario's currency
    double anchor_spread = 10;                         // octane numbers to either side
    std::optional<std::vector<std::string>> upgrades;  // ids to consider; none: the whole menu
    BatchOptions batch;
};

/// One allowed set of upgrades, solved.
struct SetResult {
    Set set{};
    bool answered = false;
    bool recommended = false;             // answered, and passes no limit
    std::string reason;                   // why it has no answer, or which limit it passes
    std::array<double, anchors> speed{};  // m/s at the lower, stated and higher anchor; NaN: none
    double least_margin{};                // octane numbers on the way up, at the stated anchor
    double cost{};
    double hours{};
    std::vector<solve::LimitViolation> passed;  // limits, at the stated anchor
    std::vector<std::size_t> picks;  // which value each open choice of the set took, from 0
};

/// What one upgrade is worth, in m/s at each anchor; NaN where there is no such number.
struct UpgradeWorth {
    std::size_t upgrade{};  // number in the scenario's menu
    std::array<double, anchors> alone{};
    std::array<double, anchors> last{};
    std::array<double, anchors> share{};
    bool in_target = false;
    std::string outside;                        // why it is not in the target
    std::vector<solve::LimitViolation> passed;  // with only this and what it needs fitted
};

/// What the fastest set lacks to the goal.
struct Missing {
    std::optional<double> power;      // W at the flywheel
    std::optional<double> drag_area;  // m2 to take off instead
};

struct Ranking {
    solve::Status status = solve::Status::not_converged;  // solved, or cancelled with what is done
    std::string sentence;
    std::array<double, anchors> octane{};    // the three anchors
    std::vector<UpgradeWorth> upgrades;      // those considered, in the order of the menu
    std::vector<SetResult> sets;             // every allowed set, the empty one first
    std::optional<std::size_t> target;       // into sets: the fastest within the budget
    std::vector<std::size_t> best_by_cost;   // into sets: each faster than all that cost no more
    std::vector<std::size_t> best_by_hours;  // likewise
    std::optional<std::size_t> cheapest_to_goal;
    std::optional<Missing> missing;      // only where no set reaches the goal
    std::vector<std::string> sentences;  // about the base, the anchors and the goal
};

/// Solves every allowed set of the menu at three knock anchors and says what each upgrade is worth.
Ranking rank(const scenario::Scenario& scenario, const RankOptions& options = {});

/// The upgrades of the scenario's menu that a set of a ranking holds.
scenario::UpgradeSet in_menu(const Ranking& ranking, Set set);

}  // namespace windwall::study
