#include "windwall/solve/full_throttle/full_load_plan.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace windwall::solve {
namespace {

constexpr std::size_t node_count = 6;
constexpr std::size_t middle_node = 3;    // where the road's effect is measured
constexpr double driveline_share = 0.85;  // of the power, for a first look at the speed
constexpr double fastest_road = 200;      // m/s

/// From 0 to 1, half way between even spacing and that of Chebyshev: closer at the ends.
double spaced(std::size_t node) {
    const double even = static_cast<double>(node) / (node_count - 1);
    const double crowded = 0.5 - 0.5 * std::cos(std::numbers::pi * even);
    return node + 1 == node_count ? 1 : 0.5 * (even + crowded);
}

/// Which gear a power takes to where the road takes all of it: the lowest that the engine's limit
/// allows there.
std::size_t expected_gear(const VehicleSolver& solver, const std::vector<std::size_t>& gears,
                          double power) {
    const auto excess = [&](double speed) {
        return solver.load(speed).total() * speed - driveline_share * power;
    };
    const double speed = numerics::find_root(excess, 1, fastest_road, {0.1, 0, 40}).x;
    for (std::size_t gear : gears) {
        const GearRange& range = solver.gear_range(gear);
        if (solver.road_speed(range.at(range.end())) >= speed) return gear;
    }
    return gears.back();
}

FullLoadPlan plan_gears(const VehicleSolver& solver, const std::vector<std::size_t>& gears,
                        std::size_t gear) {
    FullLoadPlan plan{gear, {}, node_count - 1 - middle_node, {}};
    for (std::size_t i = node_count; i-- > 0;)
        plan.nodes.push_back(spaced(i));
    const double speed = solver.gear_range(gear).at(spaced(middle_node)).engine_speed;
    for (std::size_t other : {gears.front(), gears.back(), gears[(gears.size() - 1) / 2]}) {
        const bool known = other == gear || std::ranges::any_of(plan.others, [&](const auto& one) {
                               return one.gear_state.gear == other;
                           });
        if (!known && plan.others.size() < 2) plan.others.push_back({speed, other});
    }
    return plan;
}

/// The held speed is a node, and there the whole range of the ratio shows what the road speed does.
FullLoadPlan plan_variator(const VehicleSolver& solver, std::size_t gear) {
    const GearRange& range = solver.gear_range(gear);
    const std::size_t last = range.segments();
    const std::size_t pieces = last == 3 ? 2 : 4;  // of a segment in which the engine rises
    FullLoadPlan plan{gear, {range.end()}, 0, {}};
    for (std::size_t segment = last; segment-- > 0;) {
        const double from = static_cast<double>(segment);
        if (range.shifts(segment)) {
            plan.at = plan.nodes.size() - 1;
            for (double part : {0.0, 0.5})
                plan.others.push_back(range.at(from + part));
            continue;
        }
        for (std::size_t piece = pieces; piece-- > 0;)
            plan.nodes.push_back(from + static_cast<double>(piece) / static_cast<double>(pieces));
    }
    return plan;
}

}  // namespace

std::vector<std::size_t> gears_by_speed(const VehicleSolver& solver) {
    const auto speed = [&](std::size_t gear) {
        const GearRange& range = solver.gear_range(gear);
        return solver.road_speed(range.at(range.end()));
    };
    std::vector<std::size_t> gears(solver.gears());
    std::iota(gears.begin(), gears.end(), std::size_t{0});
    std::stable_sort(gears.begin(), gears.end(),
                     [&](std::size_t a, std::size_t b) { return speed(a) < speed(b); });
    return gears;
}

FullLoadPlan plan_full_load(const VehicleSolver& solver, double power) {
    const std::vector<std::size_t> gears = gears_by_speed(solver);
    const std::size_t gear = expected_gear(solver, gears, power);
    const bool shifts = driveline::variator(solver.vehicle().driveline).has_value();
    return shifts ? plan_variator(solver, gear) : plan_gears(solver, gears, gear);
}

}  // namespace windwall::solve
