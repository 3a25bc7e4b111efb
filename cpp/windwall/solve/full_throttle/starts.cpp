#include "windwall/solve/full_throttle/starts.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr std::size_t most_together = 4;  // a cubic

}  // namespace

void Starts::add(double engine_speed, const PointSolver::State& state) {
    all_.push_back({engine_speed, state});
}

/// Those beside which a place lies, the nearest first: at different engine speeds, and all or none
/// of them with the unknowns of a held knock.
std::vector<const Starts::Start*> Starts::beside(double engine_speed) const {
    const auto distance = [&](const Start* start) {
        return std::abs(start->engine_speed - engine_speed);
    };
    const auto nearest =
        std::ranges::min_element(all_, {}, [&](const Start& start) { return distance(&start); });
    std::vector<const Start*> kept;
    kept.reserve(most_together + 1);
    for (const Start& start : all_) {
        const auto same = [&](const Start* other) {
            return other->engine_speed == start.engine_speed;
        };
        if (start.state.knocked != nearest->state.knocked || std::ranges::any_of(kept, same))
            continue;
        kept.insert(std::ranges::upper_bound(kept, distance(&start), {}, distance), &start);
        if (kept.size() > most_together) kept.pop_back();
    }
    return kept;
}

PointSolver::State Starts::expected_at(double engine_speed) const {
    const std::vector<const Start*> kept = beside(engine_speed);
    PointSolver::State expected = kept.front()->state;
    expected.unknowns.fill(0);
    for (const Start* start : kept) {
        double share = 1;  // what its value counts for in the polynomial through all
        for (const Start* other : kept)
            if (other != start)
                share *= (engine_speed - other->engine_speed) /
                         (start->engine_speed - other->engine_speed);
        for (std::size_t k = 0; k < expected.unknowns.size(); ++k)
            expected.unknowns[k] += share * start->state.unknowns[k];
    }
    return expected;
}

}  // namespace windwall::solve
