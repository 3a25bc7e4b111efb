#include "windwall/solve/full_throttle/full_load_curve.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace windwall::solve {
namespace {

constexpr std::size_t node_count = 6;
constexpr std::size_t middle_node = 3;    // where the road's effect is measured
constexpr double no_effect = 1e-9;        // of the torque
constexpr double farthest = 0.5;          // e-folds of road speed read beyond the measured ones
constexpr double driveline_share = 0.85;  // of the power, for a first look at the speed
constexpr double fastest_road = 200;      // m/s

/// From launch to limit, half way between even spacing and that of Chebyshev: closer at the ends.
std::array<double, node_count> nodes_between(double low, double high) {
    std::array<double, node_count> nodes{};
    for (std::size_t i = 0; i < node_count; ++i) {
        const double even = static_cast<double>(i) / (node_count - 1);
        const double crowded = 0.5 - 0.5 * std::cos(std::numbers::pi * even);
        nodes[i] = low + (high - low) * 0.5 * (even + crowded);
    }
    nodes.back() = high;
    return nodes;
}

/// The gears by how fast the vehicle is in them, slowest first: with two boxes the count is not
/// that.
std::vector<std::size_t> by_speed(const VehicleSolver& solver) {
    const auto speed = [&](std::size_t gear) {
        const GearRange& gear_range = solver.gear_range(gear);
        return solver.road_speed(gear_range.at(static_cast<double>(gear_range.segments())));
    };
    std::vector<std::size_t> gears(solver.gears());
    std::iota(gears.begin(), gears.end(), std::size_t{0});
    std::stable_sort(gears.begin(), gears.end(),
                     [&](std::size_t a, std::size_t b) { return speed(a) < speed(b); });
    return gears;
}

/// Which of these gears a power takes to where the road takes all of it: the lowest that the
/// engine's limit allows there.
std::size_t expected_gear(const VehicleSolver& solver, const std::vector<std::size_t>& gears,
                          double power) {
    const auto excess = [&](double speed) {
        return solver.load(speed).total() * speed - driveline_share * power;
    };
    const double speed = numerics::find_root(excess, 1, fastest_road, {0.1, 0, 40}).x;
    for (std::size_t gear : gears) {
        const GearRange& gear_range = solver.gear_range(gear);
        const double end = static_cast<double>(gear_range.segments());
        if (solver.road_speed(gear_range.at(end)) >= speed) return gear;
    }
    return gears.back();
}

/// Where the engine is held: nodes from the highest engine speed down, and at the speed of one of
/// them the settings that show what the road speed does, the one most unlike it first.
struct Plan {
    std::vector<DrivelineState> nodes;
    std::vector<DrivelineState> others;
    std::size_t at{};  // the node whose engine speed the others have
};

Plan plan_gears(const VehicleSolver& solver, const std::vector<std::size_t>& gears,
                std::size_t gear) {
    const GearRange& gear_range = solver.gear_range(gear);
    const auto speeds = nodes_between(gear_range.at(0).engine_speed, gear_range.at(1).engine_speed);
    Plan plan;
    plan.at = node_count - 1 - middle_node;
    for (std::size_t i = node_count; i-- > 0;)
        plan.nodes.push_back({speeds[i], gear});
    for (std::size_t other : {gears.front(), gears.back(), gears[(gears.size() - 1) / 2]}) {
        const bool known = other == gear || std::any_of(plan.others.begin(), plan.others.end(),
                                                        [&](const DrivelineState& s) {
                                                            return s.gear_state.gear == other;
                                                        });
        if (!known && plan.others.size() < 2) plan.others.push_back({speeds[middle_node], other});
    }
    return plan;
}

/// The held speed is a node, and there the whole range of the ratio shows what the road speed does.
Plan plan_variator(const VehicleSolver& solver, std::size_t gear) {
    const GearRange& gear_range = solver.gear_range(gear);
    const std::size_t last = gear_range.segments();
    const std::size_t pieces = last == 3 ? 2 : 4;  // of a stretch in which the engine rises
    Plan plan;
    plan.nodes.push_back(gear_range.at(static_cast<double>(last)));
    for (std::size_t segment = last; segment-- > 0;) {
        const double from = static_cast<double>(segment);
        if (gear_range.shifts(segment)) {
            plan.at = plan.nodes.size() - 1;
            for (double part : {0.0, 0.5})
                plan.others.push_back(gear_range.at(from + part));
            continue;
        }
        for (std::size_t piece = pieces; piece-- > 0;)
            plan.nodes.push_back(
                gear_range.at(from + static_cast<double>(piece) / static_cast<double>(pieces)));
    }
    return plan;
}

bool same_torque(const FullThrottlePoint& a, const FullThrottlePoint& b) {
    return std::abs(a.point.torque - b.point.torque) <= no_effect * std::abs(a.point.torque);
}

}  // namespace

RoadEffect::RoadEffect(const std::vector<FullThrottlePoint>& pulls) {
    std::vector<const FullThrottlePoint*> order;
    for (const FullThrottlePoint& pull : pulls)
        order.push_back(&pull);
    const auto speed = [](const FullThrottlePoint* pull) {
        return pull->point.condition.road_speed;
    };
    std::sort(order.begin(), order.end(),
              [&](const FullThrottlePoint* a, const FullThrottlePoint* b) {
                  return speed(a) < speed(b);
              });
    std::vector<double> speeds, shares;
    for (const FullThrottlePoint* pull : order) {
        const double log = std::log(speed(pull));
        if (!speeds.empty() && log - speeds.back() < 1e-3) continue;
        speeds.push_back(log);
        shares.push_back(pull->point.torque / order.back()->point.torque);
    }
    any_ = std::any_of(shares.begin(), shares.end(),
                       [](double share) { return std::abs(share - 1) > no_effect; });
    if (!any_) return;
    slowest_ = speeds.front();
    fastest_ = speeds.back();
    share_ = {speeds, shares};
}

double RoadEffect::share(double road_speed) const noexcept {
    if (!any_) return 1;
    const double log = std::log(std::max(road_speed, 0.1));
    return share_.at(std::clamp(log, slowest_ - farthest, fastest_ + farthest));
}

FullLoadCurve::FullLoadCurve(VehicleSolver& solver) {
    const std::vector<std::size_t> gears = by_speed(solver);
    const GearRange& fastest = solver.gear_range(gears.back());
    const DrivelineState limit = fastest.at(static_cast<double>(fastest.segments()));
    std::vector<FullThrottlePoint> nodes, others;
    if (!solve(solver, limit, nodes)) return;
    const double power = nodes.front().point.torque * limit.engine_speed;
    const std::size_t gear = expected_gear(solver, gears, power);
    const bool shifts = driveline::variator(solver.vehicle().driveline).has_value();
    const Plan plan = shifts ? plan_variator(solver, gear) : plan_gears(solver, gears, gear);
    for (std::size_t i = 0; i < plan.nodes.size(); ++i) {
        if (i > 0 && !solve(solver, plan.nodes[i], nodes)) return;
        if (i != plan.at) continue;
        others.push_back(nodes.back());
        for (const DrivelineState& setting : plan.others) {
            if (!solve(solver, setting, others)) return;
            if (same_torque(others.front(), others.back())) break;  // the road does nothing
        }
    }
    effect_ = RoadEffect(others);
    fit(nodes);
}

bool FullLoadCurve::solve(VehicleSolver& solver, const DrivelineState& setting,
                          std::vector<FullThrottlePoint>& into) {
    into.push_back(solver.once(setting, solver.road_speed(setting)));
    pulls_.push_back(into.back());
    if (!into.back().point.outcome.answered()) {
        unanswered_ = pulls_.size() - 1;
        return false;
    }
    for (std::size_t gear = 0; solver.observed() && gear < solver.gears(); ++gear) {
        if (gear == setting.gear_state.gear) continue;
        pulls_.push_back(solver.also_in(into.back(), {gear, setting.gear_state.position}));
    }
    return true;
}

void FullLoadCurve::fit(const std::vector<FullThrottlePoint>& nodes) {
    std::vector<double> speeds, torques;
    for (std::size_t i = nodes.size(); i-- > 0;) {
        const vehicle::Condition& condition = nodes[i].point.condition;
        if (!speeds.empty() && condition.engine_speed <= speeds.back()) continue;
        speeds.push_back(condition.engine_speed);
        torques.push_back(nodes[i].point.torque / effect_.share(condition.road_speed));
    }
    if (speeds.size() == 1) {  // it launches at its limit
        speeds.push_back(speeds.front() + 1);
        torques.push_back(torques.front());
    }
    torque_ = {speeds, torques};
}

double FullLoadCurve::torque(double engine_speed, double road_speed) const noexcept {
    return torque_.at(engine_speed) * effect_.share(road_speed);
}

}  // namespace windwall::solve
