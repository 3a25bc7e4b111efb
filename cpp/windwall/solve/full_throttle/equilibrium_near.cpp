#include "windwall/solve/full_throttle/equilibrium_near.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double tolerance = 1e-7;  // of the sweep
constexpr double nudge = 1e-3;      // of the sweep, to see the slope of the curve
constexpr int most_secants = 8;

/// True pulls along one gear's sweep, and the last of them.
struct Walk {
    VehicleSolver& solver;
    const FullLoadCurve& engine;
    std::size_t gear;
    FullThrottlePoint pull{};
    double off = 1;  // true road speed over the curve's

    double end() const { return static_cast<double>(solver.gear_range(gear).segments()); }

    /// The curve knows the road speed well enough to solve the point once: what is left of its slip
    /// is taken from the pull before.
    double excess_force(double along) {
        const double assumed = off * read(engine, solver, gear, along).road_speed;
        pull = solver.once(solver.gear_range(gear).at(along), assumed);
        off *= pull.road_speed / assumed;
        return pull.excess_force();
    }

    double slope(double along) const {
        const double low = std::max(0.0, along - nudge), high = std::min(end(), along + nudge);
        const auto excess_force = [&](double at) {
            return read(engine, solver, gear, at).excess_force;
        };
        return (excess_force(high) - excess_force(low)) / (high - low);
    }
};

enum class Found { balance, limit, nothing };

/// Secants from the curve's place with the curve's slope.
Found by_secants(Walk& walk, double here) {
    double slope = walk.slope(here);
    double last = here, last_excess = 0;
    for (int i = 0; i < most_secants; ++i) {
        const double excess = walk.excess_force(here);
        if (!walk.pull.point.outcome.answered()) return Found::nothing;
        if (here >= walk.end() && excess > 0) return Found::limit;
        if (i > 0 && here != last) slope = (excess - last_excess) / (here - last);
        const double next = here - excess / slope;
        if (!std::isfinite(next) || next < 0) return Found::nothing;
        if (std::abs(next - here) <= tolerance) return Found::balance;
        last = here;
        last_excess = excess;
        here = std::min(next, walk.end());
    }
    return Found::nothing;
}

/// The next sign change below a place where the true excess force has ended, then brackets.
void by_brackets(Walk& walk, double along) {
    const auto excess = [&](double at) { return walk.excess_force(at); };
    double high = std::min(along + 0.02, walk.end());
    double above = excess(high), low = high, below = above;
    for (double step = 0.04; below <= 0 && low > 0; step *= 2) {
        high = low;
        above = below;
        low = std::max(0.0, low - step);
        below = excess(low);
    }
    if (above > 0 || below <= 0) return;  // it stays where the curve left it
    excess(numerics::find_root(excess, {low, high, below, above, 0, true}, {tolerance, 0, 60}).x);
}

}  // namespace

EquilibriumSpeed equilibrium_near(VehicleSolver& solver, const FullLoadCurve& engine,
                                  std::size_t gear, double along) {
    Walk walk{solver, engine, gear};
    const Found found = by_secants(walk, along);
    if (found == Found::nothing && walk.pull.point.outcome.answered()) by_brackets(walk, along);
    const Stop ended = walk.pull.grips ? Stop::balance : Stop::grip;
    const Stop stop = found == Found::limit ? Stop::rev_limit : ended;
    return {stop, walk.pull.road_speed, gear, walk.pull};
}

}  // namespace windwall::solve
