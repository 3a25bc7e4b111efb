#include "windwall/solve/part_load/held_torque.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace windwall::solve {
namespace {

using vehicle::OperatingCondition;

constexpr double usual_pedal = 0.3, usual_idle = 0.03;  // where a cold search begins
constexpr int warm_evaluations = 40;
constexpr int cold_evaluations = 60;
constexpr double rounding = 1e-9;        // of the pedal's travel, beyond an end of it
constexpr double margin_kept = 1e-6;     // octane numbers
constexpr double coarse = 0.02;          // of the pedal's travel: Newton's method closes from there
constexpr double fine = 1e-12;           // likewise, where it does not
constexpr double held_closely = 1e-7;    // of the usual torque: a sign that changed in no jump
constexpr double first_open = 1.0 / 64;  // pedals tried upwards, each twice the last
constexpr double no_torque = -1e6;       // N m, in place of what has no answer

}  // namespace

Point HeldTorque::at(const OperatingCondition& condition, double torque) {
    if (idle_) warm_ = false;
    idle_.reset();
    return sought(condition, torque);
}

Point HeldTorque::at(const OperatingCondition& condition, double torque,
                     const vehicle::IdleSetting& idle) {
    if (!idle_) warm_ = false;
    idle_ = idle;
    return sought(condition, torque);
}

Point HeldTorque::sought(const OperatingCondition& condition, double torque) {
    hold_.ask(torque, idle_);
    if (!warm_) {
        hold_.expect(idle_ ? usual_idle : usual_pedal, 0);
        jacobian_.known = false;
    }
    const auto found = close(condition);
    return found ? *found : search(condition, torque);
}

/// From what is expected. Nothing where Newton's method does not arrive, or ends with too little
/// margin to knock, which less pedal may hold.
std::optional<Point> HeldTorque::close(const OperatingCondition& condition) {
    const int most = warm_ ? warm_evaluations : cold_evaluations;
    warm_ = false;
    const Outcome outcome = solver_->join(hold_, condition, jacobian_, most);
    if (outcome.status != Status::solved) return std::nullopt;
    const double pedal = solver_->state().unknowns[hold_.pedal()];
    const double retard = solver_->state().unknowns[hold_.retard()];
    if (pedal < -rounding) return at_end(condition, 0);
    if (pedal > 1 + rounding) return at_end(condition, 1);
    Point point = solver_->describe(outcome, retard);
    if (!holds_margin(point)) return std::nullopt;
    warm_ = true;
    hold_.expect(pedal, retard);
    return point;
}

bool HeldTorque::holds_margin(const Point& point) const {
    const engine::SparkPlan& plan = solver_->balance().vehicle().engine.visit(
        [](const auto& engine) -> const engine::SparkPlan& { return engine.spark; });
    const bool free = idle_ || plan.policy == engine::SparkPolicy::as_given;
    return free || !point.spark.modelled || plan.spare(point.spark) > -margin_kept;
}

Point HeldTorque::at_pedal(OperatingCondition condition, double pedal) {
    condition.opening = pedal;
    return idle_ ? solver_->idle_at(condition, *idle_) : solver_->at(condition);
}

/// Shut or open, where that is not enough.
Point HeldTorque::at_end(const OperatingCondition& condition, double pedal) {
    Point point = at_pedal(condition, pedal);
    if (!point.outcome.answered()) return point;
    point.outcome.status = Status::out_of_range;
    point.outcome.worst = beyond_throttle;
    return point;
}

/// By brackets over the pedal: from shut, or the least pedal from which on the air balances, up to
/// where the torque is reached.
Point HeldTorque::search(const OperatingCondition& condition, double torque) {
    Point point;
    const auto excess = [&](double pedal) {
        point = at_pedal(condition, pedal);
        return (point.outcome.answered() ? point.torque : no_torque) - torque;
    };
    double low = 0, below = excess(low);
    if (below > 0) return at_end(condition, 0);
    double high = first_open, above = excess(high);
    while (above < 0 && high < 1) {
        low = std::exchange(high, std::min(1.0, 2 * high));
        below = std::exchange(above, excess(high));
    }
    if (above < 0) return at_end(condition, 1);
    const auto near = numerics::find_root(excess, {low, high, below, above}, {coarse, 0, 30});
    hold_.expect(near.x, std::max(0.0, at_pedal(condition, near.x).spark.retard));
    jacobian_.known = false;
    const auto closed = close(condition);
    if (closed && closed->outcome.answered()) return *closed;
    const auto held = numerics::find_root(excess, {low, high, below, above}, {fine, 0, 100});
    if (std::abs(excess(held.x)) >
        held_closely * vehicle::usual_torque(solver_->balance().vehicle()))
        point.outcome.status = Status::not_converged;
    return point;
}

}  // namespace windwall::solve
