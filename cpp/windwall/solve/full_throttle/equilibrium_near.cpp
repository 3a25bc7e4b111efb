#include "windwall/solve/full_throttle/equilibrium_near.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double tolerance = 1e-7;       // of a segment of the range
constexpr double nudge = 1e-3;           // of a segment, to see the slope of the curve
constexpr double balanced = 1e-6;        // of the thrust
constexpr double nearest_answer = 1e-5;  // of a segment: as near as the last answer is found
constexpr double first_step = 0.02, widening = 2;
constexpr int most_secants = 8;
constexpr int most_halvings = 60;

/// True points along one gear's range, and the last of them.
struct Walk {
    VehicleSolver& solver;
    const FullLoadCurve& engine;
    std::size_t gear;
    FullThrottlePoint full_throttle{};
    double off = 1;  // true road speed over the curve's

    double end() const { return solver.gear_range(gear).end(); }

    /// The curve knows the road speed well enough to solve the point once: what is left of its slip
    /// is taken from the point before. Where there is no answer nothing pushes.
    double excess_force(double along) {
        const double assumed = off * read(engine, solver, gear, along).road_speed;
        full_throttle = solver.once(solver.gear_range(gear).at(along), assumed);
        if (!full_throttle.point.outcome.answered()) return -full_throttle.load.total();
        off *= full_throttle.road_speed / assumed;
        return full_throttle.excess_force();
    }

    bool answered() const { return full_throttle.point.outcome.answered(); }
    bool balances() const {
        return std::abs(full_throttle.excess_force()) <= balanced * std::abs(full_throttle.thrust);
    }

    double slope(double along) const {
        const double low = std::max(0.0, along - nudge), high = std::min(end(), along + nudge);
        const auto excess_force = [&](double at) {
            return read(engine, solver, gear, at).excess_force;
        };
        return (excess_force(high) - excess_force(low)) / (high - low);
    }
};

enum class Found { balance, end, step, last_answer, nothing };

/// Secants from the curve's place with the curve's slope.
Found by_secants(Walk& walk, double here) {
    double slope = walk.slope(here);
    double last = here, last_excess = 0;
    for (int i = 0; i < most_secants; ++i) {
        const double excess = walk.excess_force(here);
        if (!walk.answered()) return Found::nothing;
        if (here >= walk.end() && excess > 0) return Found::end;
        if (i > 0 && here != last) slope = (excess - last_excess) / (here - last);
        const double next = here - excess / slope;
        if (!std::isfinite(next) || next < 0) return Found::nothing;
        if (std::abs(next - here) <= tolerance)
            return walk.balances() ? Found::balance : Found::nothing;
        last = here;
        last_excess = excess;
        here = std::min(next, walk.end());
    }
    return Found::nothing;
}

/// Where something is left below and nothing above, or no answer.
struct Ends {
    double low, below;
    double high, above;
    bool answered_above = true;
};

/// From a place to the next sign change of the true excess force: upwards where there is some,
/// downwards where there is none. `above` stays positive where the gear ends before it.
Ends bracket(Walk& walk, double along) {
    const double here = walk.excess_force(along);
    Ends ends{along, here, along, here, walk.answered()};
    for (double step = first_step; ends.above > 0 && ends.high < walk.end(); step *= widening) {
        ends.low = ends.high;
        ends.below = ends.above;
        ends.high = std::min(walk.end(), ends.high + step);
        ends.above = walk.excess_force(ends.high);
        ends.answered_above = walk.answered();
    }
    for (double step = first_step; ends.below <= 0 && ends.low > 0; step *= widening) {
        ends.high = ends.low;
        ends.above = ends.below;
        ends.answered_above = walk.answered();
        ends.low = std::max(0.0, ends.low - step);
        ends.below = walk.excess_force(ends.low);
    }
    return ends;
}

/// Halves a bracket, to a width or until `done`, and ends at its lower side, where some is left.
template <class Done>
void halve(Walk& walk, Ends& ends, double width, Done&& done) {
    walk.excess_force(ends.low);
    FullThrottlePoint last = walk.full_throttle;
    for (int i = 0; i < most_halvings && ends.high - ends.low > width && !done(); ++i) {
        const double middle = 0.5 * (ends.low + ends.high);
        const double excess = walk.excess_force(middle);
        if (excess > 0) {
            ends.low = middle;
            ends.below = excess;
            last = walk.full_throttle;
        } else {
            ends.high = middle;
            ends.above = excess;
            ends.answered_above = walk.answered();
        }
    }
    walk.full_throttle = last;  // asked again, a point beside a jump may fall to the other side
}

Found by_brackets(Walk& walk, double along) {
    Ends ends = bracket(walk, along);
    if (ends.above > 0) return Found::end;  // the last point asked is the one at the end
    if (ends.below <= 0) return Found::nothing;
    if (!ends.answered_above)
        halve(walk, ends, nearest_answer, [&] { return ends.answered_above; });
    if (!ends.answered_above) return Found::last_answer;
    const auto excess = [&](double at) { return walk.excess_force(at); };
    const auto root = numerics::find_root(excess, {ends.low, ends.high, ends.below, ends.above},
                                          {0.01 * tolerance, 0, most_halvings});
    walk.excess_force(root.x);
    if (walk.answered() && walk.balances()) return Found::balance;
    halve(walk, ends, tolerance, [] { return false; });
    return walk.balances() ? Found::balance : Found::step;
}

StopReason stop_of(Found found, const Walk& walk) {
    const bool to_the_limit = walk.solver.ceiling() >= vehicle::speed_limit(walk.solver.vehicle());
    switch (found) {
        case Found::balance:
            return walk.full_throttle.grips ? StopReason::balance : StopReason::grip;
        case Found::end: return to_the_limit ? StopReason::rev_limit : StopReason::no_answer;
        case Found::last_answer: return StopReason::no_answer;
        case Found::step: return StopReason::torque_step;
        case Found::nothing: break;
    }
    return StopReason::standstill;
}

}  // namespace

EquilibriumSpeed equilibrium_near(VehicleSolver& solver, const FullLoadCurve& engine,
                                  std::size_t gear, double along) {
    engine.go_on_near(solver.gear_range(gear).at(along).engine_speed, solver);
    Walk walk{solver, engine, gear};
    Found found = by_secants(walk, along);
    if (found == Found::nothing) found = by_brackets(walk, along);
    return {stop_of(found, walk), walk.full_throttle.road_speed, gear, walk.full_throttle};
}

}  // namespace windwall::solve
