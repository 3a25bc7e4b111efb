#include "windwall/study/recommend.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

namespace windwall::study {
namespace {

std::vector<std::size_t> recommendable_sets(const std::vector<SetResult>& sets,
                                            const RankOptions& options) {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < sets.size(); ++i)
        if (recommendable(sets[i], options)) found.push_back(i);
    return found;
}

constexpr double smallest_told = 0.5 / 3.6;  // m/s, by anybody

/// The best reading of a speed that the builder states; none where there is none.
double stated_to(const scenario::Scenario& scenario) {
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t at = 1; at <= scenario.observed.size(); ++at) {
        const auto* note = scenario.notes.find("observed/" + std::to_string(at) + "/speed");
        if (note != nullptr && note->sigma && *note->sigma < best) best = *note->sigma;
    }
    return std::isfinite(best) ? best : 0;
}

bool alike(const SetResult& leading, const SetResult& other, const Telling& telling) {
    return std::ranges::all_of(lead_of(leading, other, telling), [&](double gap) {
        return gap <= telling.least_told;  // nor where one has no speed
    });
}

}  // namespace

bool recommendable(const SetResult& result, const RankOptions& options) {
    return result.recommended && (!options.budget || result.cost <= *options.budget);
}

std::optional<std::size_t> fastest_set(const std::vector<SetResult>& sets,
                                       const RankOptions& options) {
    std::optional<std::size_t> best;
    for (std::size_t i : recommendable_sets(sets, options))
        if (!best || sets[i].speed[middle] > sets[*best].speed[middle]) best = i;
    return best;
}

Telling telling_of(const scenario::Scenario& scenario, const RankOptions& options) {
    const double known_to = scenario.vehicle.engine.visit([]<class Engine>(const Engine& engine) {
        if constexpr (engine::Anchored<Engine>) return engine.knock_anchor.spread();
        return 0.0;
    });
    return {std::max(smallest_told, stated_to(scenario)), known_to / options.anchor_spread};
}

std::array<double, anchors> lead_of(const SetResult& leading, const SetResult& other,
                                    const Telling& telling) {
    const auto ahead = [&](std::size_t anchor) {
        return leading.speed[anchor] - other.speed[anchor];
    };
    std::array<double, anchors> made{};
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const double moved = anchor == middle ? 0 : telling.known_to;
        made[anchor] =
            moved == 0 ? ahead(middle) : ahead(middle) + moved * (ahead(anchor) - ahead(middle));
    }
    return made;
}

std::size_t cheapest_alike(const std::vector<SetResult>& sets, std::size_t fastest,
                           const Telling& telling, const RankOptions& options) {
    std::size_t best = fastest;
    for (std::size_t i : recommendable_sets(sets, options)) {
        if (!alike(sets[fastest], sets[i], telling)) continue;
        const SetResult &one = sets[i], &kept = sets[best];
        if (one.cost != kept.cost ? one.cost < kept.cost : one.speed[middle] > kept.speed[middle])
            best = i;
    }
    return best;
}

std::vector<std::size_t> best_by(const std::vector<SetResult>& sets, double SetResult::*price,
                                 const RankOptions& options) {
    std::vector<std::size_t> order = recommendable_sets(sets, options);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const SetResult &x = sets[a], &y = sets[b];
        return x.*price != y.*price ? x.*price < y.*price : x.speed[middle] > y.speed[middle];
    });
    std::vector<std::size_t> best;
    for (std::size_t i : order)
        if (best.empty() || sets[i].speed[middle] > sets[best.back()].speed[middle])
            best.push_back(i);
    return best;
}

}  // namespace windwall::study
