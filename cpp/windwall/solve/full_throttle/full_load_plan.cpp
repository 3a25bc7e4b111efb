#include "windwall/solve/full_throttle/full_load_plan.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace windwall::solve {
namespace {

constexpr std::size_t node_count = 6;
constexpr std::size_t middle_node = 3;  // where the road's effect is measured
// Of the usual road speed there: between a first gear and a second, and a body that slips through
// the air.
constexpr std::array other_roads{0.35, 1.6};
// W s3/m3, power over the cube of the speed that it gives a light vehicle, open or faired; a usual
// value, only where the curve is solved.
constexpr double usual_drag = 0.3;
constexpr double slowest_usual = 10, fastest_usual = 120;  // m/s

/// From 0 to 1, half way between even spacing and that of Chebyshev: closer at the ends.
double spaced(std::size_t node) {
    const double even = static_cast<double>(node) / (node_count - 1);
    const double crowded = 0.5 - 0.5 * std::cos(std::numbers::pi * even);
    return node + 1 == node_count ? 1 : 0.5 * (even + crowded);
}

/// Where a variator holds the engine the vehicle is driven longest.
void add_held_speeds(const vehicle::Vehicle& vehicle, std::vector<double>& falling) {
    const auto shift = usual_shift(vehicle);
    if (!shift) return;
    for (const double held : *shift) {
        if (held >= falling.front() || held <= falling.back()) continue;
        if (std::ranges::count(falling, held) > 0) continue;
        falling.insert(std::ranges::lower_bound(falling, held, std::greater{}), held);
    }
}

}  // namespace

FullLoadPlan plan_full_load(const VehicleSolver& solver) {
    const double end = solver.ceiling();
    const double launch = std::min(vehicle::launch_speed(solver.vehicle()), end);
    const double power = vehicle::usual_torque(solver.vehicle()) * end;
    FullLoadPlan plan;
    for (std::size_t i = node_count; i-- > 0;)
        plan.engine_speeds.push_back(std::lerp(launch, end, spaced(i)));
    const double middle = plan.engine_speeds[node_count - 1 - middle_node];
    add_held_speeds(solver.vehicle(), plan.engine_speeds);
    plan.at = static_cast<std::size_t>(std::ranges::find(plan.engine_speeds, middle) -
                                       plan.engine_speeds.begin());
    plan.road_per_turn =
        std::clamp(std::cbrt(power / usual_drag), slowest_usual, fastest_usual) / end;
    for (const double share : other_roads)
        plan.other_roads.push_back(share * plan.road_speed(middle));
    return plan;
}

}  // namespace windwall::solve
