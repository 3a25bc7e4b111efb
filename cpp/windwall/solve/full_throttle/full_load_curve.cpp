#include "windwall/solve/full_throttle/full_load_curve.hpp"

#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

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

/// The gear in which a vehicle comes nearest to the road speed that a point was solved at.
driveline::GearState nearest_gear(const VehicleSolver& solver, const FullThrottlePoint& point) {
    driveline::GearState nearest;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t gear = 0; gear < solver.gears(); ++gear)
        for (const auto& state : solver.gear_range(gear).states_at(engine_speed(point))) {
            const double road = solver.road_speed({engine_speed(point), state});
            const double off = std::abs(std::log(road / point.point.condition.road_speed));
            if (off < least) {
                least = off;
                nearest = state;
            }
        }
    return nearest;
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

bool FullLoadCurve::solve_plan(VehicleSolver& solver) {
    nodes_.clear();
    const FullLoadPlan plan = plan_full_load(solver);
    for (std::size_t i = 0; i < plan.engine_speeds.size(); ++i) {
        const double speed = plan.engine_speeds[i];
        if (!solve(solver, speed, plan.road_speed(speed), nodes_)) return false;
        if (i == plan.at && !solve_road_effect(solver, plan)) return false;
    }
    std::ranges::reverse(nodes_);
    refine(solver, plan);
    fit();
    let_shift(solver);
    return true;
}

bool FullLoadCurve::solve_road_effect(VehicleSolver& solver, const FullLoadPlan& plan) {
    Nodes others{nodes_.back()};
    for (const double road_speed : plan.other_roads) {
        if (!solve(solver, engine_speed(nodes_.back()), road_speed, others)) return false;
        if (same_torque(others.front(), others.back())) break;  // the road does nothing
    }
    effect_ = RoadEffect(others);
    in_other_winds_.assign(others.begin() + 1, others.end());
    return true;
}

bool FullLoadCurve::solve(VehicleSolver& solver, double engine_speed, double road_speed,
                          Nodes& into) {
    go_on_near(engine_speed, solver);
    const FullThrottlePoint point = solver.once({engine_speed, {}}, road_speed);
    const bool answered = point.point.outcome.answered();
    if (answered) {
        into.push_back(point);
        starts_.add(engine_speed, solver.point_solver().state());
    } else {
        unanswered_ = point;
    }
    return answered;
}

void FullLoadCurve::go_on_near(double engine_speed, VehicleSolver& solver) const {
    if (!starts_.empty()) solver.point_solver().jump_to(starts_.expected_at(engine_speed));
}

/// Down from the point without an answer to the highest engine speed that has one.
bool FullLoadCurve::lower_ceiling(VehicleSolver& solver) {
    const double launch = vehicle::launch_speed(solver.vehicle());
    const double width = solver.ceiling() - launch;
    const double road_per_turn =
        unanswered_->point.condition.road_speed / engine_speed(*unanswered_);
    double above = engine_speed(*unanswered_), below = above;
    Nodes ignored;
    const auto has_answer = [&](double speed) {
        return solve(solver, speed, road_per_turn * speed, ignored);
    };
    for (int step = 1; ignored.empty(); ++step) {
        if (below <= launch || step > most_steps_down + 1) return false;
        above = below;
        below = std::max(launch, below - step_down * width);
        has_answer(below);
    }
    for (int i = 0; i < ceiling_halvings && above - below > nearest_ceiling * width; ++i) {
        const double middle = 0.5 * (above + below);
        (has_answer(middle) ? below : above) = middle;
    }
    if (below <= launch) return false;
    solver.lower_ceiling(below);
    return true;
}

void FullLoadCurve::refine(VehicleSolver& solver, const FullLoadPlan& plan) {
    const double width = engine_speed(nodes_.back()) - engine_speed(nodes_.front());
    if (width <= 0) return;  // it launches where it ends
    const auto unanswered = unanswered_;
    const Refinement refinement{width, largest_torque(nodes_)};
    for (std::size_t i = 0; i + 1 < nodes_.size() && nodes_.size() < most_nodes;) {
        Nodes middle;
        const double speed = 0.5 * (engine_speed(nodes_[i]) + engine_speed(nodes_[i + 1]));
        if (refinement.wanted(nodes_, i)) solve(solver, speed, plan.road_speed(speed), middle);
        if (middle.empty())
            ++i;
        else
            nodes_.insert(nodes_.begin() + static_cast<std::ptrdiff_t>(i) + 1, middle.front());
    }
    unanswered_ = unanswered;  // between two nodes it is no end
}

void FullLoadCurve::fit() {
    std::vector<TorqueNode> torques;
    for (const FullThrottlePoint& node : nodes_) {
        if (!torques.empty() && engine_speed(node) <= torques.back().engine_speed) continue;
        const double share = effect_.share(node.point.condition.road_speed);
        held_back_ = held_back_ || regime(node.point) == Regime::held_back;
        torques.push_back({engine_speed(node), node.point.torque / share, regime(node.point)});
    }
    torque_ = TorqueOverSpeed(torques);
}

/// By copies: a solver may be asked longer than the curve is there.
void FullLoadCurve::let_shift(VehicleSolver& solver) const {
    const double low = engine_speed(nodes_.front()), high = engine_speed(nodes_.back());
    solver.shift_at(
        [=, torque = torque_, effect = effect_](double engine_speed, double road_speed) {
            return torque.at(std::clamp(engine_speed, low, high)) * effect.share(road_speed);
        });
}

double FullLoadCurve::torque(double engine_speed, double road_speed) const noexcept {
    return torque_.at(engine_speed) * effect_.share(road_speed);
}

std::vector<FullThrottlePoint> FullLoadCurve::on_the_road(VehicleSolver& solver) const {
    std::vector<FullThrottlePoint> made;
    for (const FullThrottlePoint& node : nodes_)
        for (std::size_t gear = 0; gear < solver.gears(); ++gear)
            for (const driveline::GearState& state :
                 solver.gear_range(gear).states_at(engine_speed(node)))
                made.push_back(solver.taken_to(state, node));
    for (const FullThrottlePoint& other : in_other_winds_)
        made.push_back(solver.taken_to(nearest_gear(solver, other), other));
    return made;
}

}  // namespace windwall::solve
