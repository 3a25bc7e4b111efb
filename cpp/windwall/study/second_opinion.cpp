#include "windwall/study/second_opinion.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/study/fitted_engine.hpp"
#include "windwall/study/solved_sets.hpp"

#include <cmath>
#include <set>

namespace windwall::study {
namespace {

using vehicle::Vehicle;

constexpr int most_rounds = 6;
constexpr double close = 0.05;  // octane numbers, below the last digit shown

/// The sets that opinions are of, by number, each once.
std::vector<std::size_t> looked_at(const Considered& considered, const Ranking& ranking) {
    const SolvedSets solved(ranking.sets);
    std::set<std::size_t> found{0};
    for (const std::size_t k : ranking.leaders) {
        const Set needs = considered.relations.required[k];
        found.insert(*solved.index(needs | only(k)));
        found.insert(*solved.index(needs));
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
    SecondOpinion made{.set = set, .above_the_rule = apart(answer), .speed = std::nan("")};
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

std::vector<SecondOpinion> opinions_of(const scenario::Scenario& scenario,
                                       const Considered& considered, const Ranking& ranking,
                                       const RankOptions& options) {
    if (ranking.sets.empty() || ranking.sets.front().set != 0) return {};
    const std::vector<std::size_t> sets = looked_at(considered, ranking);
    std::vector<SecondOpinion> made(sets.size());
    const auto look = [&](std::size_t i) {
        const SetResult& one = ranking.sets[sets[i]];
        const auto fitted =
            scenario::install(scenario, in_menu(considered, one.set), one.choices[middle]);
        if (const auto* vehicle = std::get_if<Vehicle>(&fitted))
            made[i] = opinion_of(*vehicle, sets[i]);
    };
    run_batch(sets.size(), [&] { return look; }, {options.batch.threads, {}});
    std::erase_if(made,
                  [](const SecondOpinion& one) { return !std::isfinite(one.above_the_rule); });
    return made;
}

}  // namespace windwall::study
