#include "windwall/solve/results/describe_variator.hpp"

#include "windwall/driveline/train.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

/// Of the air that takes the belt's heat, K.
double air_around(const vehicle::Vehicle& vehicle, double road_speed) noexcept {
    const double wind = std::max(0.0, road_speed + vehicle.day.headwind);
    return vehicle.day.temperature + vehicle.engine_bay.rise_at(wind);
}

}  // namespace

std::optional<VariatorResult> variator_result(const vehicle::Vehicle& vehicle,
                                              const FullThrottlePoint& full_throttle) {
    const driveline::Shaft crank{full_throttle.point.condition.engine_speed,
                                 full_throttle.point.torque};
    const auto passed =
        driveline::through_variator(vehicle.driveline, crank, full_throttle.gear_state());
    if (!passed) return std::nullopt;
    const auto& [belt, state, in, out] = *passed;
    const driveline::Shaft held{in.speed,
                                driveline::held_torque(in.torque, belt->holds(in.speed, state))};
    const double loss = driveline::taken(in, belt->holds(in.speed, state)).power() - out.power();
    return VariatorResult{belt->ratio(state),
                          belt->slip_share(held, state),
                          belt->efficiency(in, state),
                          belt->clamp_force(held, state),
                          belt->capacity(in.speed, state),
                          air_around(vehicle, full_throttle.road_speed) + loss / belt->to_air};
}

}  // namespace windwall::solve
