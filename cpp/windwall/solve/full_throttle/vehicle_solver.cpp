#include "windwall/solve/pull.hpp"

#include "windwall/driveline/gearing.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_passes = 6;
constexpr int most_turns = 5;  // each leaves a hundredth of what slip and tyre growth were off

}  // namespace

Puller::Puller(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if, Observer observer)
    : vehicle_(&vehicle),
      solver_(vehicle, what_if),
      observer_(std::move(observer)),
      standing_radius_(vehicle.tyres.rolling_radius()),
      grip_limit_(vehicle.tyres.grip_limit(vehicle.body.mass)) {
    for (std::size_t gear = 0; gear < driveline::gears(vehicle.driveline); ++gear)
        sweeps_.emplace_back(vehicle, gear);
}

Pull Puller::at(const Setting& setting, double agreement) {
    Pull pull = solve(setting, road_speed(setting));
    for (int pass = 1; pass < most_passes && pull.point.verdict.answered(); ++pass) {
        const double assumed = pull.point.condition.road_speed;
        if (std::abs(pull.road_speed - assumed) <= agreement * assumed) break;
        pull = solve(setting, pull.road_speed);
    }
    observe(pull);
    return pull;
}

Pull Puller::once(const Setting& setting, double road_speed) {
    Pull pull = solve(setting, road_speed);
    observe(pull);
    return pull;
}

Pull Puller::also_in(const Pull& pull, driveline::Stance stance) {
    const Setting setting{pull.point.condition.engine_speed, stance};
    Pull other = pull;
    static_cast<Reach&>(other) = reach(setting, pull.point.torque, road_speed(setting));
    other.gear = stance.gear;
    other.position = stance.position;
    other.load = load(other.road_speed);
    observe(other);
    return other;
}

Pull Puller::solve(const Setting& setting, double road_speed) {
    Pull pull;
    pull.gear = setting.stance.gear;
    pull.position = setting.stance.position;
    pull.road_speed = road_speed;
    pull.point = solver_.at({setting.engine_speed, road_speed, 1});
    if (pull.point.verdict.answered())
        static_cast<Reach&>(pull) = reach(setting, pull.point.torque, road_speed);
    pull.load = load(pull.road_speed);
    return pull;
}

void Puller::observe(Pull& pull) {
    if (observer_ && pull.point.verdict.answered()) observer_(solver_.balance(), pull);
}

Reach Puller::reach(const Setting& setting, double torque, double road_speed) const noexcept {
    const driveline::Shaft wheels =
        driveline::drive(vehicle_->driveline, {setting.engine_speed, torque}, setting.stance);
    Reach reached;
    reached.wheel_torque = wheels.torque;
    reached.road_speed = road_speed;
    for (int turn = 0; turn < most_turns; ++turn) {
        const double tyre = radius(reached.road_speed);
        reached.thrust = wheels.torque / tyre;
        reached.grips = reached.thrust <= grip_limit_;
        if (!reached.grips) reached.thrust = grip_limit_;
        reached.slip = slip(reached.thrust);
        reached.road_speed = driveline::road_speed(wheels.speed, 1, tyre, reached.slip);
        if (vehicle_->tyres.growth == 0) break;
    }
    return reached;
}

double Puller::road_speed(const Setting& setting) const noexcept {
    const double ratio = driveline::total_ratio(vehicle_->driveline, setting.stance);
    double speed = setting.engine_speed / ratio * standing_radius_;
    for (int turn = 0; turn < most_turns; ++turn) {
        const double share = slip(load(speed).total());
        speed = driveline::road_speed(setting.engine_speed, ratio, radius(speed), share);
    }
    return speed;
}

double Puller::accelerated_mass(std::size_t gear, std::size_t stretch) const noexcept {
    const Sweep& sweep = sweeps_[gear];
    const driveline::Stance middle = sweep.at(static_cast<double>(stretch) + 0.5).stance;
    const auto behind =
        sweep.shifts(stretch) ? driveline::Behind::variator : driveline::Behind::crank;
    return vehicle::accelerated_mass(*vehicle_, middle, standing_radius_, behind);
}

double Puller::launched_mass(std::size_t gear) const noexcept {
    return vehicle::accelerated_mass(*vehicle_, sweeps_[gear].at(0).stance, standing_radius_,
                                     driveline::Behind::clutch);
}

road::RoadLoad Puller::load(double road_speed) const noexcept {
    return road::road_load(vehicle_->body, road_speed, solver_.balance().around().air_density,
                           vehicle_->day.headwind, vehicle_->goal.grade);
}

double Puller::slip(double thrust) const noexcept {
    const road::Tyres& tyres = vehicle_->tyres;
    return tyres.slip(thrust, tyres.driven_load(vehicle_->body.mass, thrust));
}

double Puller::radius(double road_speed) const noexcept {
    const double relative = road_speed / road::rise_speed;
    return standing_radius_ * (1 + vehicle_->tyres.growth * relative * relative);
}

}  // namespace windwall::solve
