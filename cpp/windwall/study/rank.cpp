#include "windwall/study/rank.hpp"

#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/install.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/study/end_of_pull.hpp"
#include "windwall/study/fitted_engine.hpp"
#include "windwall/study/gains.hpp"
#include "windwall/study/goal.hpp"
#include "windwall/study/recommend.hpp"
#include "windwall/study/second_opinion.hpp"
#include "windwall/study/solve_sets.hpp"

#include <algorithm>

namespace windwall::study {
namespace {

using scenario::Scenario;

void look_at_goal(const Scenario& scenario, const Considered& considered,
                  const RankOptions& options, Ranking& ranking) {
    const auto& goal = scenario.vehicle.goal.speed;
    if (!goal) return;
    ranking.cheapest_to_goal = cheapest_to(ranking.sets, *goal, options);
    if (ranking.cheapest_to_goal || !ranking.fastest) return;
    const SetResult& best = ranking.sets[*ranking.fastest];
    const auto fitted =
        scenario::install(scenario, in_menu(considered, best.set), best.choices[middle]);
    ranking.missing = missing_to(std::get<vehicle::Vehicle>(fitted), *goal);
}

std::array<double, anchors> octane_numbers(const Scenario& scenario) {
    const double spread = scenario::anchor_spread(scenario.vehicle);
    const double stated = scenario.vehicle.engine.visit([]<class Engine>(const Engine& engine) {
        if constexpr (engine::Anchored<Engine>) return engine.knock_anchor.octane_number;
        return 0.0;  // knows nothing of knock: no anchor to move
    });
    return {stated - spread, stated, stated + spread};
}

void add_choices(const Scenario& scenario, const Considered& considered, Ranking& ranking) {
    for (SetResult& one : ranking.sets) {
        const auto chosen = [&](std::size_t anchor) {
            return chosen_values(scenario, in_menu(considered, one.set), one.choices[anchor]);
        };
        one.chosen = chosen(middle);
        one.chosen_lower = chosen(middle - 1);
        one.chosen_upper = chosen(middle + 1);
    }
}

/// The sets that end without an answer: how many, and those that hold no other. In rising order a
/// set comes after all that it holds.
void count_cut_short(Ranking& ranking) {
    for (std::size_t i = 0; i < ranking.sets.size(); ++i) {
        if (!ranking.sets[i].ends_early(middle)) continue;
        ++ranking.number_cut_short;
        const bool holds_another =
            std::ranges::any_of(ranking.smallest_cut_short, [&](std::size_t other) {
                return within(ranking.sets[other].set, ranking.sets[i].set);
            });
        if (!holds_another) ranking.smallest_cut_short.push_back(i);
    }
}

void add_target(const Scenario& scenario, const RankOptions& options, Ranking& ranking) {
    const std::vector<SetResult>& sets = ranking.sets;
    ranking.smallest_lead = least_told(scenario);
    ranking.fastest = fastest_set(sets, options);
    if (!ranking.fastest) return;
    ranking.target = cheapest_alike(sets, *ranking.fastest, ranking.smallest_lead, options);
    ranking.lead = lead_of(sets[*ranking.fastest], sets[*ranking.target]);
}

Ranking unranked(solve::Status status, std::size_t upgrades) {
    Ranking ranking;
    ranking.status = status;
    ranking.considered = upgrades;
    return ranking;
}

Ranking ranked(const Scenario& scenario, const RankOptions& options) {
    const Considered considered = consider(scenario, options);
    if (considered.upgrades.size() > most_ranked)
        return unranked(solve::Status::out_of_range, considered.upgrades.size());
    Ranking ranking;
    ranking.knock_anchors = octane_numbers(scenario);
    ranking.sets = options.solved ? *options.solved : solve_sets(scenario, considered, options);
    ranking.considered = considered.upgrades.size();
    ranking.solved = ranking.sets.size();
    ranking.allowed = allowed_sets(considered.relations).size();
    const bool complete = ranking.solved == ranking.allowed;
    ranking.status = complete ? solve::Status::solved : solve::Status::cancelled;
    add_choices(scenario, considered, ranking);
    count_cut_short(ranking);
    add_target(scenario, options, ranking);
    ranking.best_by_cost = best_by(ranking.sets, &SetResult::cost, options);
    ranking.best_by_hours = best_by(ranking.sets, &SetResult::hours, options);
    ranking.upgrades = gains_of_each(scenario, considered, ranking, options);
    ranking.leaders = leaders(considered, ranking, options);
    if (!complete) return ranking;
    look_at_goal(scenario, considered, options, ranking);
    ranking.ends_of_pulls = ends_of_pulls(scenario, considered, ranking, options);
    ranking.second_opinions = opinions_of(scenario, considered, ranking, options);
    return ranking;
}

}  // namespace

Ranking rank(const Scenario& scenario, const RankOptions& options) {
    return solve::guarded(
        [&] { return ranked(scenario, options); },
        [&] { return unranked(solve::Status::broken_off, scenario.menu.size()); });
}

scenario::UpgradeSet in_menu(const Ranking& ranking, Set set) {
    scenario::UpgradeSet wide = 0;
    for (std::size_t k = 0; k < ranking.upgrades.size(); ++k) {
        if (holds(set, k)) wide |= scenario::only(ranking.upgrades[k].upgrade);
    }
    return wide;
}

}  // namespace windwall::study
