#include "windwall/study/rank.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/study/gains.hpp"
#include "windwall/study/goal.hpp"
#include "windwall/study/solve_sets.hpp"

#include <algorithm>
#include <functional>

namespace windwall::study {
namespace {

using scenario::Scenario;
using Price = double SetResult::*;

bool affordable(const SetResult& result, const RankOptions& options) {
    return !options.budget || result.cost <= *options.budget;
}

std::optional<std::size_t> fastest(const Ranking& ranking, const RankOptions& options) {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < ranking.sets.size(); ++i) {
        const SetResult& result = ranking.sets[i];
        if (!result.recommended || !affordable(result, options)) continue;
        if (!best || result.speed[middle] > ranking.sets[*best].speed[middle]) best = i;
    }
    return best;
}

/// The recommended sets of which each is faster than all that cost no more, cheapest first.
std::vector<std::size_t> best_by(const Ranking& ranking, Price price) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < ranking.sets.size(); ++i) {
        if (ranking.sets[i].recommended) order.push_back(i);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const SetResult &x = ranking.sets[a], &y = ranking.sets[b];
        return x.*price != y.*price ? x.*price < y.*price : x.speed[middle] > y.speed[middle];
    });
    std::vector<std::size_t> best;
    for (std::size_t i : order) {
        const double speed = ranking.sets[i].speed[middle];
        if (best.empty() || speed > ranking.sets[best.back()].speed[middle]) best.push_back(i);
    }
    return best;
}

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
    ranking.target = fastest(ranking, options);
    ranking.best_by_cost = best_by(ranking, &SetResult::cost);
    ranking.best_by_hours = best_by(ranking, &SetResult::hours);
    ranking.upgrades = gains_of_each(scenario, considered, ranking);
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
