#include "windwall/study/recommend.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
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

bool alike(const SetResult& leading, const SetResult& other, double unseen) {
    return std::ranges::all_of(lead_of(leading, other), [&](double gap) {
        return gap <= unseen;  // nor where one has no speed
    });
}

bool cheaper(const SetResult& one, const SetResult& other) {
    return one.cost != other.cost ? one.cost < other.cost : one.speed[middle] > other.speed[middle];
}

/// Of those as fast as the fastest the cheapest; of some sets by number.
std::size_t fastest_of(const std::vector<SetResult>& sets, const std::vector<std::size_t>& some) {
    double most = 0;
    for (std::size_t i : some)
        most = std::max(most, sets[i].speed[middle]);
    std::size_t best = some.front();
    for (std::size_t i : some) {
        const bool as_fast = sets[i].speed[middle] >= most - same_speed;
        const bool kept = sets[best].speed[middle] >= most - same_speed;
        if (as_fast && (!kept || cheaper(sets[i], sets[best]))) best = i;
    }
    return best;
}

/// Of the recommendable sets that meet a condition.
template <class Condition>
std::optional<std::size_t> cheapest(const std::vector<SetResult>& sets, const RankOptions& options,
                                    const Condition& meets) {
    std::optional<std::size_t> best;
    for (std::size_t i : recommendable_sets(sets, options))
        if (meets(sets[i]) && (!best || cheaper(sets[i], sets[*best]))) best = i;
    return best;
}

}  // namespace

bool recommendable(const SetResult& result, const RankOptions& options) {
    return result.recommended && (!options.budget || result.cost <= *options.budget);
}

std::optional<std::size_t> fastest_set(const std::vector<SetResult>& sets,
                                       const RankOptions& options) {
    const std::vector<std::size_t> allowed = recommendable_sets(sets, options);
    return allowed.empty() ? std::nullopt : std::optional(fastest_of(sets, allowed));
}

double least_told(const scenario::Scenario& scenario) {
    return std::max(smallest_told, stated_to(scenario));
}

std::array<double, anchors> lead_of(const SetResult& leading, const SetResult& other) {
    std::array<double, anchors> made{};
    for (std::size_t anchor = 0; anchor < anchors; ++anchor)
        made[anchor] = leading.speed[anchor] - other.speed[anchor];
    return made;
}

std::size_t cheapest_alike(const std::vector<SetResult>& sets, std::size_t fastest, double unseen,
                           const RankOptions& options) {
    const auto as_good = [&](const SetResult& one) { return alike(sets[fastest], one, unseen); };
    return cheapest(sets, options, as_good).value_or(fastest);
}

std::optional<std::size_t> cheapest_to(const std::vector<SetResult>& sets, double speed,
                                       const RankOptions& options) {
    return cheapest(sets, options,
                    [&](const SetResult& one) { return one.speed[middle] >= speed; });
}

std::vector<std::size_t> best_by(const std::vector<SetResult>& sets, double SetResult::*price,
                                 const RankOptions& options) {
    std::map<double, std::vector<std::size_t>> by_price;
    for (std::size_t i : recommendable_sets(sets, options))
        by_price[sets[i].*price].push_back(i);
    std::vector<std::size_t> best;
    for (const auto& [amount, alternatives] : by_price) {
        const std::size_t i = fastest_of(sets, alternatives);
        if (best.empty() || sets[i].speed[middle] > sets[best.back()].speed[middle] + same_speed)
            best.push_back(i);
    }
    return best;
}

}  // namespace windwall::study
