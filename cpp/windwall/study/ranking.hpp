#pragma once
#include "windwall/solve/results/binding.hpp"
#include "windwall/solve/results/ending.hpp"
#include "windwall/solve/results/limit_violation.hpp"
#include "windwall/study/allowed_sets.hpp"
#include "windwall/study/chosen.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// What a ranking answers, row by row.
namespace windwall::study {

/// The knock anchor is the number known worst, so every gain is given at three of them: at the one
/// stated, and with its octane number one standard deviation lower and higher.
inline constexpr std::size_t anchors = 3;
inline constexpr std::size_t middle = 1;

/// Why a set is not recommended.
enum class Refusal { none, not_installable, no_answer, passes_limit, ends_without_answer };

/// One allowed set of upgrades, solved.
struct SetResult {
    static constexpr std::string_view description =
        "One allowed set of upgrades, solved at three knock anchors.";
    Set set{};
    std::vector<std::string> upgrades;  // ids
    bool answered = false;
    bool recommended = false;  // answered to the end, and passes no limit
    Refusal refused_for = Refusal::none;
    std::string refusal;                                     // what installing it came upon
    solve::Binding limited_by = solve::Binding::standstill;  // at the stated anchor
    std::optional<solve::Tried> unanswered;  // what has no answer, and ends the pull
    std::vector<std::size_t>
        cut_short;  // anchors at which that is so, from 0: with thrust to spare
    std::array<double, anchors> speed{};  // m/s at the lower, stated and higher anchor; NaN: none
    std::optional<double> balance_speed;  // m/s at the stated anchor, on a road without end
    double least_margin{};                // octane numbers on the way up, at the stated anchor
    std::optional<double> retard;  // rad later than best torque, where the stated anchor ends it
    std::optional<double> lambda;  // of the mixture there
    double opening = 1;            // of the throttle there: below full where knock holds it back
    double cost{};
    double hours{};
    std::vector<solve::LimitViolation> passed;       // limits, at the stated anchor
    std::array<scenario::Choices, anchors> choices;  // the value that each open choice of it took
    // The same, with whose it is and what it is: at the stated anchor, and at the other two.
    std::vector<Chosen> chosen;
    std::vector<Chosen> chosen_lower;
    std::vector<Chosen> chosen_upper;

    bool ends_early(std::size_t anchor) const noexcept;
    static std::span<const fields::Row> rows();
};

/// Why an upgrade is not in the target.
enum class Outside {
    none,
    excluded,
    no_answer,
    passes_limit,
    adds_nothing,
    adds_too_little,
    beyond_budget,
    ends_without_answer
};

/// What an upgrade is worth beside one other, both with what they require; m/s at each anchor.
struct Partner {
    static constexpr std::string_view description =
        "What an upgrade is worth beside one other, m/s at the lower, middle and upper knock "
        "anchor; NaN where one of the two needs the other.";
    std::string id;                             // of the other
    std::size_t pair{};                         // into sets: both with what they require
    std::array<double, anchors> together{};     // what the pair adds to the vehicle as it is
    std::array<double, anchors> beside{};       // what the upgrade adds where the other is fitted
    std::array<double, anchors> interaction{};  // by how much that is more than without the other

    static std::span<const fields::Row> rows();
};

/// What one upgrade adds, in m/s at each anchor; NaN where there is no such number.
struct UpgradeGain {
    static constexpr std::string_view description =
        "What one upgrade adds, m/s at the lower, middle and upper knock anchor; NaN for none.";
    std::size_t upgrade{};  // number in the scenario's menu
    std::string id;
    std::array<double, anchors> alone{};
    std::array<double, anchors> last{};
    std::array<double, anchors> share{};
    bool in_target = false;
    Outside outside = Outside::none;
    std::optional<std::size_t> fitted_first;    // into sets: it and what it needs
    std::optional<std::size_t> beside_target;   // into sets: the target with it and what it needs
    std::vector<solve::LimitViolation> passed;  // with only this and what it needs fitted
    std::vector<Chosen> chosen;                 // likewise
    // Of the pairs within the budget that pass no limit: the fastest, and those whose two gain most
    // by each other and lose most.
    std::optional<Partner> best_pair;
    std::optional<Partner> most_helped;
    std::optional<Partner> most_hindered;

    static std::span<const fields::Row> rows();
};

/// What the fastest set lacks to the goal; empty where no reasonable amount would do.
struct Missing {
    static constexpr std::string_view description =
        "What the fastest set lacks to the goal, one or the other; None where no reasonable amount "
        "would do.";
    std::optional<double> power;      // at the flywheel
    std::optional<double> drag_area;  // to take off instead

    static std::span<const fields::Row> rows();
};

/// What the second opinion on knock, the ignition delay of the end gas, makes of a set: how far it
/// is from the rule that everything is ranked by, and the speed if it is right.
struct SecondOpinion {
    static constexpr std::string_view description =
        "A set as the ignition delay of the end gas would have it, known by the same anchor.";
    std::size_t set{};        // into sets
    double above_the_rule{};  // octane numbers that it leaves above the rule, where the pull ends
    double speed{};           // m/s, with the rule moved until both agree; NaN: none

    static std::span<const fields::Row> rows();
};

/// What a set that is named has where its pull ends, at the stated anchor.
struct EndOfPull {
    static constexpr std::string_view description =
        "What a set that is named has where its pull ends, at the middle knock anchor.";
    std::size_t set{};                                // into sets
    std::optional<double> boost;                      // Pa
    std::optional<double> head_temperature;           // K
    std::optional<double> blower_outlet_temperature;  // K
    std::optional<double> water_per_fuel;             // kg/kg; empty where nothing sprays
    std::optional<double> margin_without_spray;       // octane numbers; likewise

    static std::span<const fields::Row> rows();
};

struct Ranking {
    static constexpr std::string_view description =
        "Every upgrade alone, last and by its fair share, and the best set for every budget.";
    solve::Status status = solve::Status::not_converged;  // solved, or cancelled with what is done
    std::size_t considered{};                             // upgrades
    std::size_t solved{};                                 // sets of them
    std::size_t allowed{};                                // sets of them, solved or not
    std::array<double, anchors> knock_anchors{};          // octane numbers
    std::vector<UpgradeGain> upgrades;  // those considered, in the order of the menu
    std::vector<std::size_t> leaders;   // into upgrades: the first few by their gain alone
    std::vector<SetResult> sets;        // every allowed set, the empty one first
    std::size_t number_cut_short{};     // sets that end without an answer at the stated anchor
    std::vector<std::size_t> smallest_cut_short;  // into sets: those of them that hold no other
    std::optional<std::size_t> fastest;           // into sets: within the budget
    std::optional<std::size_t> target;            // the cheapest that cannot be told from it
    std::array<double, anchors> lead{};           // of the fastest over the target, m/s
    double smallest_lead{};                       // m/s, that can be told on the road
    std::vector<std::size_t> best_by_cost;   // into sets: each faster than all that cost no more
    std::vector<std::size_t> best_by_hours;  // likewise
    std::optional<std::size_t> cheapest_to_goal;
    std::vector<EndOfPull> ends_of_pulls;        // of the sets that are named
    std::vector<SecondOpinion> second_opinions;  // of the base, the leaders and the sets named
    std::optional<Missing> missing;              // only where no set reaches the goal

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::study

template <>
struct windwall::fields::Names<windwall::study::Refusal> {
    static constexpr std::array<std::string_view, 5> names{"none", "not_installable", "no_answer",
                                                           "passes_limit", "ends_without_answer"};
};

template <>
struct windwall::fields::Names<windwall::study::Outside> {
    static constexpr std::array<std::string_view, 8> names{
        "none",         "excluded",        "no_answer",     "passes_limit",
        "adds_nothing", "adds_too_little", "beyond_budget", "ends_without_answer"};
};
