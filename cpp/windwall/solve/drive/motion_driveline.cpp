// How crank, driveline and wheels of a moving vehicle turn together, and what they weigh.
#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/road/tyres.hpp"
#include "windwall/solve/drive/motion.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double slips_beyond = 1.01;   // of its capacity, a part that has gripped
constexpr double shares_within = 1e-6;  // of the torques, the crank's share and what is passed

}  // namespace

/// Mass and crank get faster together. Of what the engine gives the crank takes its share first: a
/// part is asked for the rest alone, and where that decides whether it slips, so is all behind it.
void Motion::speed_up(const Mode& mode) {
    const auto gain = [&](double inertia) {
        return (moment_.thrust - moment_.load.total()) / inertia;
    };
    moment_.acceleration = gain(mass(mode));
    moment_.passed = moment_.torque;
    if (mode.stretch == 1 || moment_.road_speed <= 0) return;
    const double behind = mass(mode, driveline::Behind::clutch);
    const double taken = (mass(mode) - behind) * moment_.road_speed / moment_.engine_speed;
    moment_.passed -= taken * moment_.acceleration;
    if (!driveline::slips(car_.driveline, {moment_.engine_speed, moment_.torque},
                          moment_.gear_state))
        return;
    const auto left = [&](double passed) {
        reach_road(driveline::drive(car_.driveline, {moment_.engine_speed, passed},
                                    moment_.gear_state, losses_),
                   behind);
        return passed + taken * gain(behind) - moment_.torque;
    };
    const double most = std::abs(moment_.torque) + std::abs(moment_.passed) + 1;
    moment_.passed = numerics::find_root(left, -most, most).x;
    if (std::abs(left(moment_.passed)) <= shares_within * most) {
        moment_.acceleration = gain(behind);
        return;
    }
    // No share agrees with a part that passes all that it holds, one way or the other: until it
    // lets go, at once, the crank goes with the wheels.
    left(moment_.torque);
    moment_.acceleration = gain(mass(mode));
    moment_.passed = moment_.torque - taken * moment_.acceleration;
}

/// rad/s2 by which a crank that turns as fast as the wheels gets ahead of them, if the part between
/// them passes so much.
double Motion::gains_on_wheels(const Mode& mode, double passed) const {
    const double speed = moment_.engine_speed;
    double slip_heat = 0;
    const driveline::Shaft wheels =
        driveline::drive_parted(car_.driveline, {speed, passed}, moment_.gear_state,
                                wheel_speed(moment_.tyre_slip), {}, slip_heat);
    const double inertia = mass(mode, driveline::Behind::clutch);
    const double thrust =
        std::min(wheels.torque / radius(moment_.road_speed), most_thrust(inertia));
    const double gain = (thrust - moment_.load.total()) / inertia;
    const double lag =
        lag_of(driveline::drive(car_.driveline, {speed, passed}, moment_.gear_state)) /
        (1 - tyre_slip(thrust, inertia));
    const double per_speed = driveline::total_ratio(car_.driveline, moment_.gear_state) * lag /
                             radius(moment_.road_speed);
    return (moment_.torque - passed) / crank_inertia(mode) - gain * per_speed;
}

/// Whether the part between crank and wheels holds them together. While a variator shifts, it holds
/// the speed of the crank, which takes nothing for itself.
Parting Motion::parting(const Mode& mode) const {
    const auto most = driveline::parting_capacity(car_.driveline, moment_.engine_speed);
    if (!most) return {};
    const bool tied = mode.stretch != 1 && moment_.road_speed > 0;
    const auto gains = [&](double passed) {
        return tied ? gains_on_wheels(mode, passed) : moment_.torque - passed;
    };
    return {gains(slips_beyond * *most), -gains(-slips_beyond * *most)};
}

/// What the wheels give becomes thrust as far as the tyres hold.
void Motion::reach_road(const driveline::Shaft& wheels, double inertia) {
    moment_.wheel_power = wheels.power();
    moment_.wanted_thrust = wheels.torque / radius(moment_.road_speed);
    moment_.most_thrust = most_thrust(inertia);
    moment_.thrust = std::min(moment_.wanted_thrust, moment_.most_thrust);
    moment_.tyre_slip = tyre_slip(moment_.thrust, inertia);
}

/// Where all of an inertia in kg speeds up under a thrust in N: between tyres and road it is less,
/// since what turns with the wheels takes its share before them.
double Motion::tyre_slip(double thrust, double inertia) const noexcept {
    const double turning = 1 - road_mass_ / inertia;
    const double pushed = thrust - turning * (thrust - moment_.load.total());
    return car_.tyres.slip(pushed, car_.tyres.driven_load(car_.body.mass, pushed));
}

/// The thrust at which that is all the tyres hold.
double Motion::most_thrust(double inertia) const noexcept {
    const double gain = (grip_limit_ - moment_.load.total()) / road_mass_;
    return grip_limit_ + (inertia - road_mass_) * gain;
}

/// Crank speed over that without slip of belts.
double Motion::lag_of(const driveline::Shaft& wheels) const noexcept {
    const double ratio = driveline::total_ratio(car_.driveline, moment_.gear_state);
    return moment_.engine_speed / ratio / wheels.speed;
}

/// The driveline at the torque that was found; whether the crank would turn at another speed.
bool Motion::follow(double inertia) {
    const double speed = moment_.engine_speed;
    const driveline::Shaft wheels =
        driveline::drive(car_.driveline, {speed, moment_.torque}, moment_.gear_state, losses_);
    reach_road(wheels, inertia);
    moment_.gripping_speed = speed;
    const double lag = lag_of(wheels) / (1 - moment_.tyre_slip);
    const bool moved = std::abs(lag / lag_ - 1) > settled;
    lag_ = lag;
    return moved;
}

void Motion::account(double crank_power, double slip_heat) {
    const auto put = [&](Energy entry, double power) {
        moment_.power[static_cast<std::size_t>(entry)] = power;
    };
    const double v = moment_.road_speed;
    double lost = 0;
    for (const double each : losses_)
        lost += each;
    const bool parted = driveline::parting(car_.driveline).has_value();
    put(Energy::crank, crank_power);
    put(Energy::clutch, slip_heat);
    put(Energy::driveline, lost - (parted ? slip_heat : 0));
    put(Energy::tyres, moment_.wheel_power - moment_.thrust * v);
    put(Energy::air, moment_.load.air * v);
    put(Energy::rolling, moment_.load.rolling * v);
    put(Energy::grade, moment_.load.grade * v);
}

double Motion::mass(const Mode& mode, driveline::Behind behind) const noexcept {
    return vehicle::accelerated_mass(car_, gear_state(mode), standing_radius_, behind);
}

double Motion::mass(const Mode& mode) const noexcept {
    using driveline::Behind;
    const bool geared = mode.phase == Phase::driving || mode.phase == Phase::holding;
    if (!geared) return mass(mode, Behind::clutch);
    return mass(mode, mode.stretch == 1 ? Behind::variator : Behind::crank);
}

double Motion::crank_inertia(const Mode& mode) const noexcept {
    using driveline::Behind;
    const driveline::GearState state = gear_state(mode);
    const double ratio = driveline::total_ratio(car_.driveline, state);
    const double before = driveline::inertia_at_wheels(car_.driveline, state, Behind::crank) -
                          driveline::inertia_at_wheels(car_.driveline, state, Behind::clutch);
    return vehicle::inertia_at_crank(car_) + before / (ratio * ratio);
}

/// N m that a crank takes for itself while a variator shifts along a line, and the road gets faster
/// as it did a turn ago.
double Motion::taken_by_crank(double inertia) const noexcept {
    using driveline::Behind;
    const auto at_wheels = [&](Behind behind) {
        return driveline::inertia_at_wheels(car_.driveline, moment_.gear_state, behind);
    };
    const double ratio = driveline::total_ratio(car_.driveline, moment_.gear_state);
    const double before =
        (at_wheels(Behind::crank) - at_wheels(Behind::variator)) / (ratio * ratio);
    const double gain = (moment_.thrust - moment_.load.total()) / inertia / moment_.road_speed;
    return (vehicle::inertia_at_crank(car_) + before) * crank_share_ * gain * moment_.engine_speed;
}

driveline::GearState Motion::gear_state(const Mode& mode) const noexcept {
    if (!driveline::variator(car_.driveline, mode.gear)) return {mode.gear};
    switch (mode.phase) {
        case Phase::standing:
        case Phase::engine_off: return {mode.gear, 0.0};
        case Phase::driving:
        case Phase::holding: return {mode.gear, mode.stretch == 0 ? 0.0 : 1.0};
        case Phase::slipping:
        case Phase::shifting:
        case Phase::coasting:
        case Phase::braking: break;
    }
    return {mode.gear, mode.position};
}

double Motion::geared_speed(const Mode& mode, double road_speed) const noexcept {
    return road_speed / radius(road_speed) *
           driveline::total_ratio(car_.driveline, gear_state(mode));
}

/// The crank speed, or while a variator shifts its position, at the lag of the last moment.
void Motion::set_driveline(const Mode& mode, double without_slip) noexcept {
    moment_.engine_speed = without_slip * lag_;
    crank_share_ = 0;
    if (mode.stretch != 1) return;
    const auto variator = driveline::variator(car_.driveline, mode.gear);
    if (!variator) return;
    const double output = moment_.engine_speed / (variator->before * variator->high_ratio);
    const double torque = mode.phase == Phase::holding ? mode.shift_torque : moment_.torque;
    moment_.wanted_position = variator->wanted_position(output, torque);
    const double position = std::clamp(moment_.wanted_position, 0.0, 1.0);
    moment_.gear_state.position = position;
    // Beyond an end, by what slips more or less since it was come to, the gearing stays.
    const bool inside = position == moment_.wanted_position;
    moment_.engine_speed = inside ? variator->held_speed(position, torque)
                                  : variator->before * output * variator->ratio(position);
    crank_share_ = variator->crank_share(position, torque);
}

double Motion::radius(double road_speed) const noexcept {
    const double relative = road_speed / road::rise_speed;
    return standing_radius_ * (1 + car_.tyres.growth * relative * relative);
}

double Motion::wheel_speed(double slip) const noexcept {
    return moment_.road_speed / radius(moment_.road_speed) / (1 - slip);
}

}  // namespace windwall::solve
