#include "windwall/solve/full_throttle/full_load_curve.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_ceilings = 4;
constexpr int most_steps_down = 8;
constexpr double step_down = 1.0 / most_steps_down;  // of the range, in search of an answer
constexpr double narrow = 1.0 / 256;      // of the range: as near as the end of a regime is found
constexpr double wide = 1.0 / 10;         // of the range: too far for a straight line
constexpr double steep = 0.02;            // of the largest torque, from node to node
constexpr double nearest_ceiling = 1e-3;  // of the range
constexpr std::size_t most_nodes = 128;
constexpr int ceiling_halvings = 60;

double engine_speed(const FullThrottlePoint& point) { return point.point.condition.engine_speed; }

double largest_torque(const std::vector<FullThrottlePoint>& nodes) {
    double largest = 0;
    for (const FullThrottlePoint& node : nodes)
        largest = std::max(largest, std::abs(node.point.torque));
    return largest;
}

/// Decides where between two nodes another one is wanted.
struct Refinement {
    double range;    // of engine speed
    double largest;  // torque

    bool wanted(const std::vector<FullThrottlePoint>& nodes, std::size_t i) const {
        const FullThrottlePoint &below = nodes[i], &above = nodes[i + 1];
        const double width = (engine_speed(above) - engine_speed(below)) / range;
        if (width < narrow) return false;
        const Regime here = regime(below.point);
        if (here != regime(above.point)) return true;
        if (here == Regime::held_back)
            return std::abs(above.point.torque - below.point.torque) > steep * largest;
        const auto same = [&](std::size_t k) {
            return k < nodes.size() && regime(nodes[k].point) == here;
        };
        return width > wide && !same(i - 1) && !same(i + 2);
    }
};

}  // namespace

FullLoadCurve::FullLoadCurve(VehicleSolver& solver) {
    for (int i = 0; i < most_ceilings && !answered_; ++i) {
        answered_ = solve_plan(solver);
        if (!answered_ && !lower_ceiling(solver)) return;
    }
}

/// Nodes from the end of the range down: at its end in the fastest gear, which tells the power.
bool FullLoadCurve::solve_plan(VehicleSolver& solver) {
    points_.clear();
    const GearRange& fastest = solver.gear_range(gears_by_speed(solver).back());
    const DrivelineState end = fastest.at(fastest.end());
    Nodes nodes;
    if (!solve(solver, end, nodes)) return false;
    const FullLoadPlan plan = plan_full_load(solver, nodes.front().point.torque * end.engine_speed);
    for (std::size_t i = 0; i < plan.nodes.size(); ++i) {
        if (i > 0 && !solve(solver, solver.gear_range(plan.gear).at(plan.nodes[i]), nodes))
            return false;
        if (i == plan.at && !solve_road_effect(solver, plan, nodes)) return false;
    }
    std::ranges::reverse(nodes);
    refine(solver, plan.gear, nodes);
    fit(nodes);
    return true;
}

bool FullLoadCurve::solve_road_effect(VehicleSolver& solver, const FullLoadPlan& plan,
                                      const Nodes& nodes) {
    Nodes others{nodes.back()};
    for (const DrivelineState& driveline_state : plan.others) {
        if (!solve(solver, driveline_state, others)) return false;
        if (same_torque(others.front(), others.back())) break;  // the road does nothing
    }
    effect_ = RoadEffect(others);
    return true;
}

bool FullLoadCurve::solve(VehicleSolver& solver, const DrivelineState& driveline_state,
                          Nodes& into) {
    const FullThrottlePoint point = attempt(solver, driveline_state, into);
    const bool answered = point.point.outcome.answered();
    if (!answered) unanswered_ = point;
    return answered;
}

/// Without an answer it is no node, which between two others is no end either.
FullThrottlePoint FullLoadCurve::attempt(VehicleSolver& solver,
                                         const DrivelineState& driveline_state, Nodes& into) {
    const FullThrottlePoint point =
        solver.once(driveline_state, solver.road_speed(driveline_state));
    if (!point.point.outcome.answered()) return point;
    into.push_back(point);
    points_.push_back(point);
    for (std::size_t gear = 0; solver.observed() && gear < solver.gears(); ++gear) {
        if (gear == driveline_state.gear_state.gear) continue;
        points_.push_back(solver.also_in(point, {gear, driveline_state.gear_state.position}));
    }
    return point;
}

/// Down from the point without an answer to the highest engine speed that has one, in its gear.
bool FullLoadCurve::lower_ceiling(VehicleSolver& solver) {
    const GearRange range = solver.gear_range(unanswered_->gear);
    const double launch = range.at(0).engine_speed, width = solver.ceiling() - launch;
    double above = engine_speed(*unanswered_), below = above;
    Nodes ignored;
    for (int step = 1; ignored.empty(); ++step) {
        if (below <= launch || step > most_steps_down + 1) return false;
        above = below;
        below = std::max(launch, below - step_down * width);
        solve(solver, range.at_engine_speed(below), ignored);
    }
    for (int i = 0; i < ceiling_halvings && above - below > nearest_ceiling * width; ++i) {
        const double middle = 0.5 * (above + below);
        (solve(solver, range.at_engine_speed(middle), ignored) ? below : above) = middle;
    }
    if (below <= launch) return false;
    solver.lower_ceiling(below);
    return true;
}

void FullLoadCurve::refine(VehicleSolver& solver, std::size_t gear, Nodes& nodes) {
    const GearRange& range = solver.gear_range(gear);
    const double width = engine_speed(nodes.back()) - engine_speed(nodes.front());
    if (width <= 0) return;  // it launches where it ends
    const Refinement refinement{width, largest_torque(nodes)};
    for (std::size_t i = 0; i + 1 < nodes.size() && nodes.size() < most_nodes;) {
        Nodes middle;
        const double speed = 0.5 * (engine_speed(nodes[i]) + engine_speed(nodes[i + 1]));
        if (refinement.wanted(nodes, i)) attempt(solver, range.at_engine_speed(speed), middle);
        if (middle.empty())
            ++i;
        else
            nodes.insert(nodes.begin() + static_cast<std::ptrdiff_t>(i) + 1, middle.front());
    }
}

void FullLoadCurve::fit(const Nodes& nodes) {
    std::vector<TorqueNode> torques;
    for (const FullThrottlePoint& node : nodes) {
        if (!torques.empty() && engine_speed(node) <= torques.back().engine_speed) continue;
        const double share = effect_.share(node.point.condition.road_speed);
        held_back_ = held_back_ || regime(node.point) == Regime::held_back;
        torques.push_back({engine_speed(node), node.point.torque / share, regime(node.point)});
    }
    torque_ = TorqueOverSpeed(torques);
}

double FullLoadCurve::torque(double engine_speed, double road_speed) const noexcept {
    return torque_.at(engine_speed) * effect_.share(road_speed);
}

}  // namespace windwall::solve
