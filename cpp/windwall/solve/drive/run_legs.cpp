// What each leg of an outing makes the driver do.
#include "windwall/driveline/launch.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/solve/drive/run.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double moving = 0.02;  // m/s

Guard when(std::function<double(double, std::span<const double>)> number) {
    return {Guard::Then::leg_done, {}, {}, 0, std::move(number), {}};
}

Guard when_moment(Happening what, std::function<double(const Moment&)> number) {
    return {Guard::Then::leg_done, what, {}, 0, {}, std::move(number)};
}

}  // namespace

void Run::begin(const vehicle::Leg& leg) {
    leg_guards_.clear();
    then_stand_.reset();
    waits_for_speed_ = waits_for_less_ = held_ = lost_ = false;
    leg_speed_ = 0;
    slow_since_.reset();
    leg.visit([&](const auto& each) { begin(each); });
}

void Run::until_time(double seconds) {
    leg_guards_.push_back(when([end = time_ + seconds](double time, auto) { return time - end; }));
}

void Run::until_distance(double metres) {
    const double end = state_[Layout::distance] + metres;
    leg_guards_.push_back(
        when([end](double, auto state) { return state[Layout::distance] - end; }));
}

void Run::until_speed(double speed, bool falling) {
    const double sign = falling ? -1 : 1;
    leg_guards_.push_back(when(
        [speed, sign](double, auto state) { return sign * (state[Layout::road_speed] - speed); }));
}

/// The last centimetre a second goes at once.
void Run::stand(double time, bool engine_off) {
    const double before = motion_.kinetic_energy(mode_, state_);
    state_[Layout::road_speed] = 0;
    result_.changed += before - motion_.kinetic_energy(mode_, state_);
    set({.phase = engine_off ? Phase::engine_off : Phase::standing});
    until_time(time);
}

void Run::begin(const vehicle::Idle& leg) {
    if (leg.engine_speed) motion_.set_idle(*leg.engine_speed);
    stand(leg.time, false);
}

void Run::begin(const vehicle::Launch& leg) {
    launch(leg.engine_speed);
    leg_guards_.push_back(when_moment(Happening::clutch_grips, [](const Moment& now) {
        return now.gripping_speed - now.engine_speed;
    }));
}

void Run::begin(const vehicle::FullThrottle& leg) {
    full_throttle();
    if (leg.to_speed) until_speed(*leg.to_speed, false);
    if (leg.for_distance) until_distance(*leg.for_distance);
    if (leg.for_time) until_time(*leg.for_time);
    if (leg.to_engine_speed)
        leg_guards_.push_back(when_moment({}, [wanted = *leg.to_engine_speed](const Moment& now) {
            return now.engine_speed - wanted;
        }));
    waits_for_speed_ = leg.to_speed || leg.to_engine_speed;
}

void Run::begin(const vehicle::Coast& leg) {
    if (leg.in_gear && mode_.phase != Phase::standing)
        set(in_gear(gear_for(speed()), 0));
    else
        set({.phase = Phase::coasting, .gear = mode_.gear});
    if (leg.to_speed) until_speed(*leg.to_speed, true);
    waits_for_less_ = leg.to_speed.has_value();
    if (leg.for_distance) until_distance(*leg.for_distance);
    if (leg.for_time) until_time(*leg.for_time);
}

void Run::begin(const vehicle::Stop& leg) {
    turned_ = turned_ != leg.turn_round;
    if (speed() <= moving) return stand(leg);
    then_stand_ = leg;
    set({.phase = Phase::braking, .gear = mode_.gear, .deceleration = leg.deceleration});
}

/// Where it stands, and not before, somebody opens the bonnet.
void Run::stand(const vehicle::Stop& leg) {
    motion_.open_hood(leg.hood_over(vehicle_.engine_bay.hood) == vehicle::Hood::open);
    stand(leg.time, leg.engine == vehicle::StandingEngine::off);
}

void Run::launch(std::optional<double> engine_speed) {
    ++run_;
    road_from_ = turned_ ? road_from_ + direction_ * run_distance() : 0;
    direction_ = turned_ ? -direction_ : 1;
    turned_ = false;
    run_start_time_ = time_;
    run_start_distance_ = state_[Layout::distance];
    motion_.open_hood(vehicle_.engine_bay.hood == vehicle::Hood::open);
    launch_speed_ =
        engine_speed.value_or(outing_.launch_speed.value_or(vehicle::launch_speed(vehicle_)));
    const std::size_t gear = outing_.launch_gear
                                 ? static_cast<std::size_t>(*outing_.launch_gear) - 1
                                 : shifts_.start_gear;
    engage(std::min(gear, shifts_.up.size() - 1));
}

void Run::full_throttle() {
    const bool pulling =
        (mode_.phase == Phase::driving || mode_.phase == Phase::slipping) && mode_.pedal > 0;
    if (pulling) return set(mode_);
    if (speed() <= moving) return launch({});
    engage(gear_for(speed()));
}

/// In a gear under power: slipping, where the wheels turn the crank too slowly.
void Run::engage(std::size_t gear) {
    slow_since_.reset();
    Mode mode{.phase = Phase::driving, .gear = gear};
    const double geared = motion_.geared_speed(mode, speed());
    const bool by_speed = driveline::grips_by_speed(vehicle_.driveline);
    if (geared >= launch_speed_) return set(pulling(gear));
    mode.phase = Phase::slipping;
    mode.engine_free = by_speed;
    mode.engine_speed = launch_speed_;
    mode.rests = speed() <= 0;
    state_[Layout::engine_speed] =
        by_speed ? std::max(motion_.idle_speed(), geared) : launch_speed_;
    set(mode);
}

}  // namespace windwall::solve
