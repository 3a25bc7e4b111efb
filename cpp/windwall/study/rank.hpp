#pragma once
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/limits.hpp"
#include "windwall/study/allowed_sets.hpp"
#include "windwall/study/batch.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace windwall::study {

/// The knock anchor is the number known worst, so every gain is given at three of them: lower means
/// an engine that knocks later. Octane numbers added to `engine/knock_anchor/octane_number`.
inline constexpr std::size_t anchors = 3;
struct RankOptions {
    std::optional<double> budget;  // in the scenario's currency
    double anchor_spread = 10;     // octane numbers to either side of the middle
    std::optional<std::vector<std::string>> upgrades;  // ids to consider; none: the whole menu
    BatchOptions batch;
};

/// One set of upgrades, solved.
struct SetResult {
    Set set{};
    bool allowed = false;
    std::string reason;                    // why not allowed or not answered
    std::array<double, anchors> speed{};   // m/s at the lower, middle and upper anchor; NaN: none
    std::array<double, anchors> margin{};  // least knock margin on the way up
    double cost = 0;
    double hours = 0;
    std::vector<solve::Passed> passed;  // limits passed at the middle anchor
    std::vector<std::size_t> choice;    // which value each `choose` of the set took
    bool recommended = false;           // answered, and passes no limit the builder may not pass
};

/// One upgrade, in every light.
struct UpgradeWorth {
    std::string id;
    std::array<double, anchors> alone{};  // v(needs + it) - v(needs)
    std::array<double, anchors> last{};   // v(T) - v(T without it and what needs it)
    std::array<double, anchors> share{};  // fair share of T's gain
    bool in_target = false;
    std::string outside;  // why it is not in T
};

struct Ranking {
    solve::Status status = solve::Status::not_converged;  // solved, or cancelled with what is done
    std::string sentence;
    Set target = 0;                      // T: the fastest within the budget
    std::vector<UpgradeWorth> upgrades;  // in the order of the menu
    std::vector<SetResult> sets;         // every allowed set, the empty one first
    std::vector<std::size_t>
        best_by_cost;  // indices into sets: each faster than all that cost no more
    std::vector<std::size_t> best_by_hours;
    std::optional<std::size_t> cheapest_to_goal;
    double missing_power = 0;            // W at the road, where no set reaches the goal
    double missing_drag_area = 0;        // m2 to take off instead
    std::vector<std::string> sentences;  // about first place and the anchors, limits, the goal
};

/// Solves every allowed set of the menu at three knock anchors.
Ranking rank(const scenario::Scenario& scenario, const RankOptions& options = {});

}  // namespace windwall::study
