#include "windwall/solve/drive/shift_speeds.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/run_up.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double never = std::numeric_limits<double>::max();
constexpr int looks = 64;  // along a gear, for where the next one pushes harder

/// From where on the next gear accelerates more, within both; the end of the first where it never
/// does.
double crossing(const VehicleSolver& solver, const TractiveEffortCurve& now,
                const TractiveEffortCurve& next) {
    const auto gain = [&](double v) {
        const double load = solver.load(v).total();
        return (next.thrust(v) - load) / next.accelerated_mass(v) -
               (now.thrust(v) - load) / now.accelerated_mass(v);
    };
    const double low = std::max(now.low_speed(), next.low_speed());
    const double high = now.high_speed();
    double before = low;
    for (int i = 0; i <= looks && low < high; ++i) {
        const double v = low + (high - low) * i / looks;
        if (gain(v) > 0) return i == 0 ? v : numerics::find_root(gain, before, v).x;
        before = v;
    }
    return high;
}

}  // namespace

ShiftSpeeds shift_speeds(const vehicle::Vehicle& vehicle) {
    VehicleSolver solver(vehicle);
    const FullLoadCurve engine(solver);
    ShiftSpeeds found;
    found.up.assign(solver.gears(), never);
    if (!engine.answered()) return found;
    const auto curves = tractive_effort_curves(engine, solver);
    for (std::size_t gear = 0; gear + 1 < curves.size(); ++gear)
        found.up[gear] = crossing(solver, curves[gear], curves[gear + 1]);
    found.start_gear = start_gear(solver, engine);
    return found;
}

}  // namespace windwall::solve
