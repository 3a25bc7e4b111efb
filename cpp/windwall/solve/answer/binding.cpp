#include "windwall/solve/answer/binding.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

namespace windwall::solve {
namespace {

/// How much faster the wheels get at one engine speed until the belt has shifted up; 1 without one.
double still_to_shift(const vehicle::Vehicle& vehicle, driveline::GearState gear_state) {
    return driveline::total_ratio(vehicle.driveline, gear_state) /
           driveline::total_ratio(vehicle.driveline, gear_state.gear);
}

}  // namespace

Binding binding(const EquilibriumSpeed& equilibrium) {
    if (!equilibrium.full_throttle) return Binding::standstill;
    switch (equilibrium.stop) {
        case StopReason::standstill: return Binding::standstill;
        case StopReason::rev_limit: return Binding::rev_limit;
        case StopReason::grip: return Binding::grip;
        case StopReason::torque_step: return Binding::torque_step;
        case StopReason::no_answer: return Binding::no_answer;
        case StopReason::balance: break;
    }
    const bool knocks = equilibrium.full_throttle->point.outcome.status == Status::knock_limited;
    return knocks ? Binding::knock : Binding::drag;
}

std::optional<NextBinding> next_binding(const EquilibriumSpeed& equilibrium,
                                        const vehicle::Vehicle& vehicle) {
    const bool ends =
        equilibrium.stop == StopReason::torque_step || equilibrium.stop == StopReason::no_answer;
    if (!equilibrium.full_throttle || ends) return std::nullopt;
    const FullThrottlePoint& full_throttle = *equilibrium.full_throttle;
    if (equilibrium.stop == StopReason::rev_limit) {
        return NextBinding{Binding::drag, full_throttle.load.total() / full_throttle.thrust,
                           std::nullopt};
    }
    const double to_limit = vehicle::speed_limit(vehicle) /
                                full_throttle.point.condition.engine_speed *
                                still_to_shift(vehicle, full_throttle.gear_state()) -
                            1;
    const double to_grip = vehicle.tyres.grip_limit(vehicle.body.mass) / full_throttle.thrust - 1;
    if (to_grip < to_limit) return NextBinding{Binding::grip, to_grip, std::nullopt};
    return NextBinding{Binding::rev_limit, to_limit, full_throttle.road_speed * to_limit};
}

std::optional<BeltPosition> belt_position(const vehicle::Vehicle& vehicle,
                                          driveline::GearState gear_state) {
    const auto variator = driveline::variator(vehicle.driveline, gear_state.gear);
    if (!variator) return std::nullopt;
    return BeltPosition{variator->ratio(gear_state.position), gear_state.position >= 1,
                        gear_state.position <= 0};
}

std::optional<Tried> unanswered(const TopSpeed& found) {
    const Outcome& outcome = found.outcome;
    const auto& there = found.equilibrium.full_throttle;
    if (found.unanswered && (outcome.answered() || !there)) return tried(found.unanswered->point);
    if (outcome.answered() || outcome.status == Status::no_balance) return std::nullopt;
    Tried made = tried(there ? there->point : Point{});
    made.ending = ending(outcome);
    return made;
}

}  // namespace windwall::solve
