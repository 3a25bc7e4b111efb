#include "windwall/study/end_of_pull.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/answer/answer.hpp"

#include <algorithm>
#include <set>

namespace windwall::study {
namespace {

std::vector<std::size_t> named(const Ranking& ranking) {
    std::set<std::size_t> found{0};
    for (const auto* list : {&ranking.best_by_cost, &ranking.best_by_hours})
        found.insert(list->begin(), list->end());
    for (const auto& one : {ranking.fastest, ranking.target, ranking.cheapest_to_goal})
        if (one) found.insert(*one);
    return {found.begin(), found.end()};
}

/// Behind the blower that makes it hottest; empty without one.
std::optional<double> hottest_outlet(const solve::OperatingPoint& point) {
    std::optional<double> hottest;
    for (const auto& entry : point.charge_path)
        if (const auto* blower = entry.part.as<solve::CompressedResult>())
            hottest = std::max(hottest.value_or(0), blower->outlet.temperature);
    return hottest;
}

EndOfPull end_of(const vehicle::Vehicle& vehicle, std::size_t set) {
    const solve::TopSpeedResult answer = solve::answer_speed_briefly(vehicle);
    EndOfPull made;
    made.set = set;
    if (!answer.point) return made;
    made.boost = answer.point->manifold.boost;
    made.head_temperature = answer.point->engine.head_temperature;
    made.blower_outlet_temperature = hottest_outlet(*answer.point);
    made.margin_without_spray = answer.margin_without_spray;
    if (answer.point->knock) made.water_per_fuel = answer.point->knock->water_per_fuel;
    return made;
}

}  // namespace

std::vector<EndOfPull> ends_of_pulls(const scenario::Scenario& scenario,
                                     const Considered& considered, const Ranking& ranking,
                                     const RankOptions& options) {
    if (ranking.sets.empty()) return {};
    const std::vector<std::size_t> sets = named(ranking);
    std::vector<EndOfPull> made(sets.size());
    const auto look = [&](std::size_t i) {
        const SetResult& one = ranking.sets[sets[i]];
        const auto fitted =
            scenario::install(scenario, in_menu(considered, one.set), one.choices[middle]);
        if (const auto* vehicle = std::get_if<vehicle::Vehicle>(&fitted))
            made[i] = end_of(*vehicle, sets[i]);
    };
    run_batch(sets.size(), [&] { return look; }, {options.batch.threads, {}});
    std::erase_if(made, [](const EndOfPull& one) { return !one.boost; });
    return made;
}

}  // namespace windwall::study
