#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include "windwall/driveline/gearing.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_passes = 6;
constexpr int most_turns = 5;  // each leaves a hundredth of what slip was off
// m/s, of the air that cools and rams. At its end a gear too tall ever to be driven out would go
// faster, where nothing that is said of air holds.
constexpr double fastest_air = 500;
constexpr double most_grown = 2;  // radius over that at standstill, where growth runs away

}  // namespace

VehicleSolver::VehicleSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                             Watch* watch)
    : vehicle_(&vehicle),
      point_solver_(vehicle, what_if),
      watch_(watch),
      ceiling_(vehicle::speed_limit(vehicle)) {
    carry(vehicle);
}

void VehicleSolver::carry(const vehicle::Vehicle& other) {
    vehicle_ = &other;
    standing_radius_ = other.tyres.rolling_radius();
    grip_limit_ = other.tyres.grip_limit(other.body.mass);
    lower_ceiling(ceiling_);
}

void VehicleSolver::lower_ceiling(double engine_speed) {
    ceiling_ = engine_speed;
    find_gear_ranges();
}

void VehicleSolver::shift_at(std::function<double(double, double)> torque) {
    full_torque_ = std::move(torque);
    find_gear_ranges();
}

void VehicleSolver::find_gear_ranges() {
    gear_ranges_.clear();
    for (std::size_t gear = 0; gear < driveline::gears(vehicle_->driveline); ++gear) {
        if (full_torque_)
            gear_ranges_.emplace_back(*vehicle_, gear, ceiling_, [this](const DrivelineState& at) {
                return full_torque_(at.engine_speed, road_speed(at));
            });
        else
            gear_ranges_.emplace_back(*vehicle_, gear, ceiling_);
    }
}

FullThrottlePoint VehicleSolver::at(const DrivelineState& driveline_state, double agreement) {
    FullThrottlePoint full_throttle = solve(driveline_state, road_speed(driveline_state));
    for (int pass = 1; pass < most_passes && full_throttle.point.outcome.answered(); ++pass) {
        const double assumed = full_throttle.point.condition.road_speed;
        if (std::abs(full_throttle.road_speed - assumed) <= agreement * assumed) break;
        full_throttle = solve(driveline_state, full_throttle.road_speed);
    }
    if (full_throttle.point.outcome.answered() && !tyres_keep_shape(full_throttle))
        full_throttle.point.outcome = {Status::out_of_range, outgrown_tyres, 0,
                                       full_throttle.point.outcome.evaluations};
    read(full_throttle);
    return full_throttle;
}

FullThrottlePoint VehicleSolver::once(const DrivelineState& driveline_state, double road_speed) {
    FullThrottlePoint full_throttle = solve(driveline_state, road_speed);
    read(full_throttle);
    return full_throttle;
}

FullThrottlePoint VehicleSolver::taken_to(driveline::GearState gear_state,
                                          const FullThrottlePoint& full_throttle) {
    const DrivelineState driveline_state{full_throttle.point.condition.engine_speed, gear_state};
    FullThrottlePoint other = full_throttle;
    static_cast<TractiveState&>(other) =
        tractive_state(driveline_state, full_throttle.point.torque, road_speed(driveline_state));
    other.gear = gear_state.gear;
    other.position = gear_state.position;
    other.load = load(other.road_speed);
    if (watch_ != nullptr) watch_->read_road(*vehicle_, other);
    return other;
}

FullThrottlePoint VehicleSolver::solve(const DrivelineState& driveline_state, double road_speed) {
    FullThrottlePoint full_throttle;
    full_throttle.gear = driveline_state.gear_state.gear;
    full_throttle.position = driveline_state.gear_state.position;
    full_throttle.road_speed = road_speed;
    full_throttle.point =
        point_solver_.at({driveline_state.engine_speed, std::min(road_speed, fastest_air), 1});
    if (full_throttle.point.outcome.answered())
        static_cast<TractiveState&>(full_throttle) =
            tractive_state(driveline_state, full_throttle.point.torque, road_speed);
    full_throttle.load = load(full_throttle.road_speed);
    return full_throttle;
}

void VehicleSolver::read(FullThrottlePoint& full_throttle) {
    if (watch_ == nullptr || !full_throttle.point.outcome.answered()) return;
    watch_->read(point_solver_.balance(), full_throttle);
    watch_->read_road(*vehicle_, full_throttle);
}

TractiveState VehicleSolver::tractive_state(const DrivelineState& driveline_state, double torque,
                                            double road_speed) const noexcept {
    const driveline::Shaft wheels = driveline::drive(
        vehicle_->driveline, {driveline_state.engine_speed, torque}, driveline_state.gear_state);
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

/// A turn leaves a small share of what slip was off, nearly the same one each time: two of them
/// tell where all would end.
double VehicleSolver::road_speed(const DrivelineState& driveline_state) const noexcept {
    const double ratio = driveline::total_ratio(vehicle_->driveline, driveline_state.gear_state);
    const auto turn = [&](double speed) {
        return on_grown_tyres(driveline::road_speed(driveline_state.engine_speed, ratio,
                                                    standing_radius_, slip(load(speed).total())));
    };
    const double rolling = driveline_state.engine_speed / ratio * standing_radius_;
    const double first = turn(rolling), second = turn(first);
    if (first == rolling) return rolling;
    const double left = (second - first) / (first - rolling);
    return second + (second - first) * left / (1 - left);
}

double VehicleSolver::accelerated_mass_at(std::size_t gear, double along) const noexcept {
    const driveline::GearState state = gear_ranges_[gear].at(along).gear_state;
    const auto mass = [&](driveline::Behind behind) {
        return vehicle::accelerated_mass(*vehicle_, state, standing_radius_, behind);
    };
    const double share = gear_ranges_[gear].crank_share(along);
    if (share == 1) return mass(driveline::Behind::crank);
    // A shift along a line takes the crank along by a share of its energy at a fixed ratio.
    const double behind = mass(driveline::Behind::variator);
    return share == 0 ? behind : std::lerp(behind, mass(driveline::Behind::crank), share);
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
    if (vehicle_->tyres.growth == 0) return standing;
    const double relative = standing / road::rise_speed;
    const double left = 1 - 4 * vehicle_->tyres.growth * relative * relative;
    return most_grown * standing / (1 + std::sqrt(std::max(0.0, left)));
}

bool same_range(const vehicle::Vehicle& a, const vehicle::Vehicle& b) noexcept {
    return vehicle::launch_speed(a) == vehicle::launch_speed(b) &&
           vehicle::speed_limit(a) == vehicle::speed_limit(b) && usual_shift(a) == usual_shift(b);
}

bool VehicleSolver::tyres_keep_shape(const FullThrottlePoint& full_throttle) const noexcept {
    return radius(full_throttle.road_speed) < most_grown * standing_radius_;
}

}  // namespace windwall::solve
