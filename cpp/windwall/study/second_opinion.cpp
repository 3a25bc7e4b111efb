#include "windwall/study/second_opinion.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/study/fitted_engine.hpp"
#include "windwall/study/recommend.hpp"
#include "windwall/study/solved_sets.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace windwall::study {
namespace {

using vehicle::Vehicle;

constexpr std::size_t most_leaders = 3;
constexpr int most_rounds = 6;
constexpr double close = 0.05;  // octane numbers, below the last digit shown

/// The sets that opinions are of, by number, each once.
std::vector<std::size_t> looked_at(const Considered& considered, const Ranking& ranking) {
    const SolvedSets solved(ranking.sets);
    std::set<std::size_t> found{0};
    for (const std::size_t k : ranking.leaders) {
        found.insert(*ranking.upgrades[k].fitted_first);
        found.insert(*solved.index(considered.relations.required[k]));
    }
    for (const auto& one : {ranking.target, ranking.cheapest_to_goal})
        if (one) found.insert(*one);
    return {found.begin(), found.end()};
}

/// What the delay has to spare above the rule; NaN where one of the two says nothing.
double apart(const solve::TopSpeedResult& answer) {
    const auto* knock = answer.point && answer.point->knock ? &*answer.point->knock : nullptr;
    return knock ? knock->integral_margin.value_or(std::nan("")) - knock->margin : std::nan("");
}

double goal_speed(const solve::TopSpeedResult& answer) {
    if (!answer.ending.answered || !answer.speed) return std::nan("");
    return answer.run_up ? answer.run_up->speed : *answer.speed;
}

/// Both opinions know the engine by the same anchor. The rule alone is moved until it holds what
/// the delay would hold with the anchor as stated: by as much as they are apart there.
SecondOpinion opinion_of(const Vehicle& vehicle, std::size_t set) {
    solve::TopSpeedResult answer = solve::answer_speed_briefly(vehicle);
    SecondOpinion made{.set = set, .apart = apart(answer), .speed = std::nan("")};
    double shift = 0;
    for (int round = 0; round < most_rounds && std::isfinite(apart(answer)); ++round) {
        const double next = -apart(answer);
        made.speed = goal_speed(answer);
        if (std::abs(next - shift) < close) break;
        answer = solve::answer_speed_briefly(at_anchor(vehicle, shift = next));
    }
    if (!std::isfinite(apart(answer))) made.speed = std::nan("");
    return made;
}

}  // namespace

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
    std::ranges::sort(order, [&](std::size_t a, std::size_t b) {
        return gain(a) != gain(b) ? gain(a) > gain(b) : cost(a) < cost(b);
    });
    if (order.size() > most_leaders) order.resize(most_leaders);
    return order;
}

std::vector<SecondOpinion> second_opinions(const scenario::Scenario& scenario,
                                           const Considered& considered, const Ranking& ranking,
                                           const RankOptions& options) {
    if (ranking.sets.empty() || ranking.sets.front().set != 0) return {};
    const std::vector<std::size_t> sets = looked_at(considered, ranking);
    std::vector<SecondOpinion> made(sets.size());
    const auto look = [&](std::size_t i) {
        const SetResult& one = ranking.sets[sets[i]];
        const auto fitted = scenario::install(scenario, in_menu(considered, one.set), one.choices);
        if (const auto* vehicle = std::get_if<Vehicle>(&fitted))
            made[i] = opinion_of(*vehicle, sets[i]);
    };
    run_batch(sets.size(), [&] { return look; }, {options.batch.threads, {}});
    std::erase_if(made, [](const SecondOpinion& one) { return !std::isfinite(one.apart); });
    return made;
}

}  // namespace windwall::study
