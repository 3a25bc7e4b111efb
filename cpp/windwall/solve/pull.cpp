#include "windwall/solve/pull.hpp"

#include "windwall/driveline/gearing.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_passes = 6;

bool cooled_by_the_road(const vehicle::Vehicle& vehicle) {
    return std::any_of(
        vehicle.charge_path.begin(), vehicle.charge_path.end(),
        [](const auto& entry) { return entry.part.template as<charge::ChargeCooler>(); });
}

}  // namespace

Puller::Puller(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if, Observer observer)
    : vehicle_(&vehicle),
      solver_(vehicle, what_if),
      observer_(std::move(observer)),
      road_cools_(cooled_by_the_road(vehicle)),
      standing_radius_(vehicle.tyres.rolling_radius()),
      grip_limit_(vehicle.tyres.grip_limit(vehicle.body.mass)),
      lowest_(vehicle::launch_speed(vehicle)),
      highest_(vehicle::speed_limit(vehicle)) {
    for (std::size_t gear = 0; gear < driveline::gears(vehicle.driveline); ++gear) {
        ratios_.push_back(driveline::total_ratio(vehicle.driveline, gear));
        masses_.push_back(vehicle::accelerated_mass(vehicle, gear, standing_radius_));
    }
}

Pull Puller::at(double engine_speed, std::size_t gear, double agreement) {
    Pull pull;
    pull.gear = gear;
    const double rolling = engine_speed / ratios_[gear] * standing_radius_;
    pull.slip = vehicle_->tyres.slip(load(rolling).total(),
                                     vehicle_->tyres.driven_load(vehicle_->body.mass, 0));
    pull.road_speed = rolling * (1 - pull.slip);
    for (int pass = 0; pass < most_passes; ++pass) {
        const double assumed = pull.road_speed;
        pull.point = solve(engine_speed, assumed);
        if (!pull.point.verdict.answered()) return pull;
        reach_road(pull);
        if (!road_cools_ || std::abs(pull.road_speed - assumed) <= agreement * assumed) break;
    }
    if (observer_) observer_(solver_.balance(), pull);
    return pull;
}

const Point& Puller::solve(double engine_speed, double road_speed) {
    const bool same =
        !road_cools_ && last_.verdict.answered() && last_.condition.engine_speed == engine_speed;
    if (!same) last_ = solver_.at({engine_speed, road_speed, 1});
    return last_;
}

/// From the flywheel through the driveline to the road.
void Puller::reach_road(Pull& pull) const noexcept {
    const vehicle::Vehicle& car = *vehicle_;
    const driveline::Shaft wheels = driveline::drive(
        car.driveline, {pull.point.condition.engine_speed, pull.point.torque}, pull.gear);
    const double tyre = radius(pull.road_speed);
    pull.wheel_torque = wheels.torque;
    pull.thrust = wheels.torque / tyre;
    pull.grips = pull.thrust <= grip_limit_;
    if (!pull.grips) pull.thrust = grip_limit_;
    pull.slip = car.tyres.slip(pull.thrust, car.tyres.driven_load(car.body.mass, pull.thrust));
    pull.road_speed = driveline::road_speed(wheels.speed, 1, tyre, pull.slip);
    pull.load = load(pull.road_speed);
}

road::RoadLoad Puller::load(double road_speed) const noexcept {
    return road::road_load(vehicle_->body, road_speed, solver_.balance().around().air_density,
                           vehicle_->day.headwind, vehicle_->goal.grade);
}

double Puller::engine_speed(double road_speed, std::size_t gear) const noexcept {
    return driveline::engine_speed(road_speed, ratios_[gear], radius(road_speed), 0);
}

double Puller::radius(double road_speed) const noexcept {
    const double relative = road_speed / road::rise_speed;
    return standing_radius_ * (1 + vehicle_->tyres.growth * relative * relative);
}

}  // namespace windwall::solve
