#include "windwall/study/rank.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/study/gains.hpp"
#include "windwall/study/goal.hpp"
#include "windwall/study/recommend.hpp"
#include "windwall/study/solve_sets.hpp"

namespace windwall::study {
namespace {

using scenario::Scenario;

std::optional<std::size_t> cheapest_to(const Ranking& ranking, double speed) {
    for (std::size_t i : ranking.best_by_cost) {
        if (ranking.sets[i].speed[middle] >= speed) return i;
    }
    return std::nullopt;
}

void look_at_goal(const Scenario& scenario, const Considered& considered, Ranking& ranking) {
    const auto& goal = scenario.vehicle.goal.speed;
    if (!goal) return;
    ranking.cheapest_to_goal = cheapest_to(ranking, *goal);
    if (ranking.cheapest_to_goal || ranking.best_by_cost.empty()) return;
    const SetResult& best = ranking.sets[ranking.best_by_cost.back()];
    const auto fitted = scenario::install(scenario, in_menu(considered, best.set), best.picks);
    ranking.missing = missing_to(std::get<vehicle::Vehicle>(fitted), *goal);
}

std::array<double, anchors> octane_numbers(const Scenario& scenario, double spread) {
    const double stated = scenario.vehicle.engine.visit([]<class Engine>(const Engine& engine) {
        if constexpr (engine::Anchored<Engine>) return engine.knock_anchor.octane_number;
        return 0.0;  // knows nothing of knock: no anchor to move
    });
    return {stated - spread, stated, stated + spread};
}

void add_choices(const Scenario& scenario, const Considered& considered, Ranking& ranking) {
    for (SetResult& one : ranking.sets)
        one.chosen = chosen_values(scenario, in_menu(considered, one.set), one.picks);
}

void add_target(const Scenario& scenario, const RankOptions& options, Ranking& ranking) {
    const std::vector<SetResult>& sets = ranking.sets;
    const Telling telling = telling_of(scenario, options);
    ranking.smallest_lead = telling.least_told;
    ranking.fastest = fastest_set(sets, options);
    if (!ranking.fastest) return;
    ranking.target = cheapest_alike(sets, *ranking.fastest, telling, options);
    ranking.lead = lead_of(sets[*ranking.fastest], sets[*ranking.target], telling);
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
    ranking.knock_anchors = octane_numbers(scenario, options.anchor_spread);
    ranking.sets = solve_sets(scenario, considered, options);
    ranking.considered = considered.upgrades.size();
    ranking.solved = ranking.sets.size();
    ranking.allowed = allowed_sets(considered.relations).size();
    const bool complete = ranking.solved == ranking.allowed;
    ranking.status = complete ? solve::Status::solved : solve::Status::cancelled;
    add_choices(scenario, considered, ranking);
    add_target(scenario, options, ranking);
    ranking.best_by_cost = best_by(ranking.sets, &SetResult::cost, options);
    ranking.best_by_hours = best_by(ranking.sets, &SetResult::hours, options);
    ranking.upgrades = gains_of_each(scenario, considered, ranking, options);
    if (complete) look_at_goal(scenario, considered, ranking);
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
