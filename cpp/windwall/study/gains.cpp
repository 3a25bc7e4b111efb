#include "windwall/study/gains.hpp"

#include "windwall/study/fair_share.hpp"
#include "windwall/study/pairs.hpp"
#include "windwall/study/recommend.hpp"
#include "windwall/study/solved_sets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::study {
namespace {

constexpr std::size_t most_leaders = 3;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

void add_shares(const Considered& considered, const SolvedSets& solved, Set target,
                std::vector<UpgradeGain>& gains) {
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const Shares shares = fair_share(
            target, gains.size(), [&](Set set) { return std::isfinite(solved.speed(set, anchor)); },
            [&](Set set) { return solved.speed(set, anchor); });
        for (std::size_t k = 0; k < gains.size(); ++k) {
            const bool member = holds(target, k) && shares.reachable;
            gains[k].share[anchor] = member ? shares.share[k] : nan;
            const Set rest = without(considered.relations, target, k);
            gains[k].last[anchor] =
                holds(target, k) ? solved.speed(target, anchor) - solved.speed(rest, anchor) : nan;
        }
    }
}

Outside why_outside(const Considered& considered, const SolvedSets& solved, Set target,
                    std::size_t k, const RankOptions& options) {
    if ((considered.relations.excluded[k] & target) != 0) return Outside::excluded;
    const SetResult* with = solved.find(target | considered.relations.required[k] | only(k));
    if (with == nullptr) return Outside::excluded;
    if (!with->answered) return Outside::no_answer;
    if (with->ends_early(middle)) return Outside::ends_without_answer;
    if (!with->passed.empty()) return Outside::passes_limit;
    if (with->speed[middle] <= solved.speed(target, middle) + same_speed)
        return Outside::adds_nothing;
    return recommendable(*with, options) ? Outside::adds_too_little : Outside::beyond_budget;
}

}  // namespace

std::vector<UpgradeGain> gains_of_each(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking,
                                       const RankOptions& options) {
    const SolvedSets solved(ranking.sets);
    std::vector<UpgradeGain> gains(considered.upgrades.size());
    for (std::size_t k = 0; k < gains.size(); ++k) {
        const Set needs = considered.relations.required[k];
        gains[k].upgrade = considered.upgrades[k];
        gains[k].id = scenario.menu[considered.upgrades[k]].id;
        gains[k].last.fill(nan);
        gains[k].share.fill(nan);
        for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
            gains[k].alone[anchor] =
                solved.speed(needs | only(k), anchor) - solved.speed(needs, anchor);
        }
        gains[k].fitted_first = solved.index(needs | only(k));
        if (!gains[k].fitted_first) continue;
        const SetResult& alone = ranking.sets[*gains[k].fitted_first];
        gains[k].passed = alone.passed;
        gains[k].chosen = alone.chosen;
    }
    add_partners(
        considered.relations, solved,
        [&](const SetResult& one) { return recommendable(one, options); }, gains);
    if (!ranking.target) return gains;
    const Set target = ranking.sets[*ranking.target].set;
    add_shares(considered, solved, target, gains);
    for (std::size_t k = 0; k < gains.size(); ++k) {
        gains[k].in_target = holds(target, k);
        if (gains[k].in_target) continue;
        gains[k].outside = why_outside(considered, solved, target, k, options);
        gains[k].beside_target = solved.index(target | considered.relations.required[k] | only(k));
    }
    return gains;
}

std::vector<std::size_t> leaders(const Considered& considered, const Ranking& ranking,
                                 const RankOptions& options) {
    const SolvedSets solved(ranking.sets);
    std::vector<std::size_t> order;
    const auto gain = [&](std::size_t k) { return ranking.upgrades[k].alone[middle]; };
    const auto cost = [&](std::size_t k) {
        return ranking.sets[*ranking.upgrades[k].fitted_first].cost;
    };
    for (std::size_t k = 0; k < ranking.upgrades.size(); ++k) {
        if (!ranking.upgrades[k].fitted_first || !(gain(k) > 0)) continue;
        const Set needs = considered.relations.required[k];
        const bool whole = std::isfinite(solved.whole_speed(needs | only(k), middle)) &&
                           std::isfinite(solved.whole_speed(needs, middle));
        if (whole && (!options.budget || cost(k) <= *options.budget)) order.push_back(k);
    }
    std::vector<std::size_t> first;
    while (!order.empty() && first.size() < most_leaders) {
        const double most = gain(*std::ranges::max_element(order, {}, gain));
        const auto next = std::ranges::min_element(order, {}, [&](std::size_t k) {
            return gain(k) >= most - same_speed ? cost(k) : std::numeric_limits<double>::infinity();
        });
        first.push_back(*next);
        order.erase(next);
    }
    return first;
}

}  // namespace windwall::study
