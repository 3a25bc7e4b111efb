#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include "windwall/driveline/gearing.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_passes = 6;
constexpr int most_turns = 5;     // each leaves a hundredth of what slip was off
constexpr double most_grown = 2;  // radius over that at standstill, where growth runs away

}  // namespace

VehicleSolver::VehicleSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                             Observer observer)
    : vehicle_(&vehicle),
      point_solver_(vehicle, what_if),
      observer_(std::move(observer)),
      standing_radius_(vehicle.tyres.rolling_radius()),
      grip_limit_(vehicle.tyres.grip_limit(vehicle.body.mass)) {
    lower_ceiling(vehicle::speed_limit(vehicle));
}

void VehicleSolver::lower_ceiling(double engine_speed) {
    ceiling_ = engine_speed;
    gear_ranges_.clear();
    for (std::size_t gear = 0; gear < driveline::gears(vehicle_->driveline); ++gear)
        gear_ranges_.emplace_back(*vehicle_, gear, ceiling_);
}

FullThrottlePoint VehicleSolver::at(const DrivelineState& setting, double agreement) {
    FullThrottlePoint pull = solve(setting, road_speed(setting));
    for (int pass = 1; pass < most_passes && pull.point.outcome.answered(); ++pass) {
        const double assumed = pull.point.condition.road_speed;
        if (std::abs(pull.road_speed - assumed) <= agreement * assumed) break;
        pull = solve(setting, pull.road_speed);
    }
    if (pull.point.outcome.answered() && !tyres_keep_shape(pull))
        pull.point.outcome = {Status::out_of_range, outgrown_tyres, 0,
                              pull.point.outcome.evaluations};
    observe(pull);
    return pull;
}

FullThrottlePoint VehicleSolver::once(const DrivelineState& setting, double road_speed) {
    FullThrottlePoint pull = solve(setting, road_speed);
    observe(pull);
    return pull;
}

FullThrottlePoint VehicleSolver::also_in(const FullThrottlePoint& pull,
                                         driveline::GearState gear_state) {
    const DrivelineState setting{pull.point.condition.engine_speed, gear_state};
    FullThrottlePoint other = pull;
    static_cast<TractiveState&>(other) =
        tractive_state(setting, pull.point.torque, road_speed(setting));
    other.gear = gear_state.gear;
    other.position = gear_state.position;
    other.load = load(other.road_speed);
    observe(other);
    return other;
}

FullThrottlePoint VehicleSolver::solve(const DrivelineState& setting, double road_speed) {
    FullThrottlePoint pull;
    pull.gear = setting.gear_state.gear;
    pull.position = setting.gear_state.position;
    pull.road_speed = road_speed;
    pull.point = point_solver_.at({setting.engine_speed, road_speed, 1});
    if (pull.point.outcome.answered())
        static_cast<TractiveState&>(pull) = tractive_state(setting, pull.point.torque, road_speed);
    pull.load = load(pull.road_speed);
    return pull;
}

void VehicleSolver::observe(FullThrottlePoint& pull) {
    if (observer_ && pull.point.outcome.answered()) observer_(point_solver_.balance(), pull);
}

TractiveState VehicleSolver::tractive_state(const DrivelineState& setting, double torque,
                                            double road_speed) const noexcept {
    const driveline::Shaft wheels =
        driveline::drive(vehicle_->driveline, {setting.engine_speed, torque}, setting.gear_state);
    TractiveState reached;
    reached.wheel_torque = wheels.torque;
    reached.road_speed = road_speed;
    for (int turn = 0; turn < most_turns; ++turn) {
        const double tyre = radius(reached.road_speed);
        reached.thrust = wheels.torque / tyre;
        reached.grips = reached.thrust <= grip_limit_;
        if (!reached.grips) reached.thrust = grip_limit_;
        reached.slip = slip(reached.thrust);
        reached.road_speed =
            on_grown_tyres(driveline::road_speed(wheels.speed, 1, standing_radius_, reached.slip));
        if (vehicle_->tyres.growth == 0) break;
    }
    return reached;
}

double VehicleSolver::road_speed(const DrivelineState& setting) const noexcept {
    const double ratio = driveline::total_ratio(vehicle_->driveline, setting.gear_state);
    double speed = setting.engine_speed / ratio * standing_radius_;
    for (int turn = 0; turn < most_turns; ++turn) {
        const double share = slip(load(speed).total());
        speed = on_grown_tyres(
            driveline::road_speed(setting.engine_speed, ratio, standing_radius_, share));
    }
    return speed;
}

double VehicleSolver::accelerated_mass(std::size_t gear, std::size_t segment) const noexcept {
    const GearRange& gear_range = gear_ranges_[gear];
    const driveline::GearState middle =
        gear_range.at(static_cast<double>(segment) + 0.5).gear_state;
    const auto behind =
        gear_range.shifts(segment) ? driveline::Behind::variator : driveline::Behind::crank;
    return vehicle::accelerated_mass(*vehicle_, middle, standing_radius_, behind);
}

double VehicleSolver::launched_mass(std::size_t gear) const noexcept {
    return vehicle::accelerated_mass(*vehicle_, gear_ranges_[gear].at(0).gear_state,
                                     standing_radius_, driveline::Behind::clutch);
}

road::RoadLoad VehicleSolver::load(double road_speed) const noexcept {
    return road::road_load(vehicle_->body, road_speed,
                           point_solver_.balance().surroundings().air_density,
                           vehicle_->day.headwind, vehicle_->goal.grade);
}

double VehicleSolver::slip(double thrust) const noexcept {
    const road::Tyres& tyres = vehicle_->tyres;
    return tyres.slip(thrust, tyres.driven_load(vehicle_->body.mass, thrust));
}

double VehicleSolver::radius(double road_speed) const noexcept {
    const double relative = road_speed / road::rise_speed;
    return standing_radius_ *
           std::min(1 + vehicle_->tyres.growth * relative * relative, most_grown);
}

/// The radius grows with the square of the speed that it gives: v = v_0 (1 + g v^2), of which the
/// smaller root is the one reached from below. From 4 g v_0^2 = 1 on there is none.
double VehicleSolver::on_grown_tyres(double standing) const noexcept {
    const double relative = standing / road::rise_speed;
    const double left = 1 - 4 * vehicle_->tyres.growth * relative * relative;
    return most_grown * standing / (1 + std::sqrt(std::max(0.0, left)));
}

bool VehicleSolver::tyres_keep_shape(const FullThrottlePoint& pull) const noexcept {
    return radius(pull.road_speed) < most_grown * standing_radius_;
}

}  // namespace windwall::solve
