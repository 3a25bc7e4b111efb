#include "windwall/solve/drive/motion.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr int most_turns = 8;
constexpr double standstill = 1;  // rad/s, of an engine that is off, for what is divided by it

}  // namespace

Motion::Motion(const vehicle::Vehicle& vehicle)
    : car_(vehicle),
      solver_(car_),
      torque_(solver_),
      losses_(vehicle.driveline.size()),
      standing_radius_(vehicle.tyres.rolling_radius()),
      grip_limit_(vehicle.tyres.grip_limit(vehicle.body.mass)),
      road_mass_(vehicle.body.mass + vehicle.body.rotating_mass(standing_radius_)),
      idle_speed_(solve::idle_speed(vehicle)) {
    if (const auto* cylinder = car_.engine.as<engine::Cylinder>()) {
        film_time_ = cylinder->evaporation.film_time;
        if (cylinder->combustion.trims_for_injected_fuel)
            trim_time_ = cylinder->combustion.trim_time.value_or(0);
    }
}

void Motion::open_hood(bool open) noexcept {
    car_.engine_bay.hood = open ? vehicle::Hood::open : vehicle::Hood::closed;
}

const Moment& Motion::at(const Mode& mode, const Place& place, std::span<const double> state) {
    car_.goal.grade = place.grade;
    car_.day.headwind = place.headwind;
    hold(mode, state);
    moment_.answered = true;
    moment_.unsettled = 0;
    moment_.power = {};
    moment_.road_speed = state[Layout::road_speed];
    moment_.engine_speed = state[Layout::engine_speed];
    moment_.gear_state = gear_state(mode);
    moment_.engine_acceleration = moment_.acceleration = 0;
    moment_.load =
        road::road_load(car_.body, moment_.road_speed, solver_.balance().surroundings().air_density,
                        place.headwind, place.grade);
    switch (mode.phase) {
        case Phase::standing:
        case Phase::engine_off: stand(mode); break;
        case Phase::slipping: slip(mode); break;
        case Phase::driving: drive(mode); break;
        case Phase::holding: keep_speed(mode); break;
        case Phase::shifting:
        case Phase::coasting:
        case Phase::braking: roll(mode); break;
    }
    // What would roll back from standstill is held by the brakes.
    if (moment_.road_speed <= 0) moment_.acceleration = std::max(0.0, moment_.acceleration);
    if (mode.rests) moment_.acceleration = 0;
    // While gears change no point is sought: temperatures and pumps go on in the charge before it.
    heat(mode, state);
    pump(mode, state);
    return moment_;
}

void Motion::stand(const Mode& mode) {
    moment_.thrust = moment_.wanted_thrust = moment_.tyre_slip = 0;
    moment_.gripping_speed = 0;
    std::ranges::fill(losses_, 0);
    if (mode.phase == Phase::standing) return idle();
    moment_.engine_speed = moment_.torque = moment_.fuel_flow = moment_.liquid_flow = 0;
    moment_.point = {};
    solver_.surround({standstill, 0, 0});
}

/// With the pedal released an engine idles where its stop is set to, which is set dry: one that is
/// still wet from a spray gets no more air for that. Where it would not idle, it turns at what the
/// stop left open last.
void Motion::idle() {
    moment_.torque = 0;
    moment_.engine_speed = idle_speed_;
    const bool sprays = !layout_.pumps.empty();
    if (sprays) solver_.hold_state(&dry());
    moment_.point = solve::idle(torque_, car_, idle_speed_, moment_.road_speed);
    const bool idles = moment_.point.outcome.answered();
    if (idles) idle_stop_ = moment_.point.condition.opening;
    if (sprays) solver_.hold_state(&held_);
    if (sprays || !idles)
        moment_.point =
            solver_.idle_at({idle_speed_, moment_.road_speed, idle_stop_}, idle_setting(car_));
    if (!idles) torque_.forget();
    take_point();
}

/// As it is held, but that nothing is sprayed or left on the walls.
const vehicle::HeldState& Motion::dry() {
    dry_ = held_;
    dry_.film.reset();
    dry_.trim.reset();
    for (const std::size_t part : layout_.pumps)
        dry_.path[part].running = 0;
    return dry_;
}

/// What the part passes on that lets crank and wheels turn apart: what the engine gives, unless it
/// holds less, or grips by its own speed.
double Motion::slipping_torque(const Mode& mode) const {
    const double given = moment_.point.torque;
    const auto most = driveline::parting_capacity(car_.driveline, moment_.engine_speed);
    if (!most) return given;
    if (!mode.engine_free) return std::min(given, *most);
    return mode.ahead ? -*most : *most;
}

/// Crank and wheels turn apart; both speed up by what they get.
void Motion::slip(const Mode& mode) {
    const double speed = mode.engine_free ? moment_.engine_speed : mode.engine_speed;
    moment_.engine_speed = speed;
    if (!ask(speed, mode.pedal)) return;
    const double given = moment_.point.torque;
    const double torque = moment_.torque = slipping_torque(mode);
    const double lag =
        lag_of(driveline::drive(car_.driveline, {speed, torque}, moment_.gear_state));
    double slip_heat = 0;
    for (int turn = 0; turn < 2; ++turn) {
        const driveline::Shaft wheels =
            driveline::drive_parted(car_.driveline, {speed, torque}, moment_.gear_state,
                                    wheel_speed(moment_.tyre_slip), losses_, slip_heat);
        reach_road(wheels, mass(mode));
    }
    moment_.gripping_speed = geared_speed(mode, moment_.road_speed) * lag / (1 - moment_.tyre_slip);
    moment_.acceleration = (moment_.thrust - moment_.load.total()) / mass(mode);
    if (mode.engine_free) moment_.engine_acceleration = (given - torque) / crank_inertia(mode);
    account((mode.engine_free ? given : torque) * speed, slip_heat);
}

/// Turns until the crank turns at the speed that what slips at its torque asks for. Where it would
/// go to and fro without end, that speed is looked for between the two.
template <class Turn>
void Motion::settle(Turn&& turn) {
    double from = lag_;
    std::array<double, 2> ends{}, moves{};  // where it went down from, and up
    const auto move = [&](double lag) {
        lag_ = from = lag;
        turn();
        return lag_ - from;
    };
    for (int turns = 0; turns < most_turns; ++turns) {
        from = lag_;
        if (turn()) return;
        const std::size_t up = lag_ > from ? 1 : 0;
        ends[up] = from;
        moves[up] = lag_ - from;
    }
    if (moves[0] < 0 && moves[1] > 0) {
        const numerics::Bracket between{ends[1], ends[0], moves[1], moves[0], 0};
        move(numerics::find_root(move, between, {0, settled}).x);
    }
    moment_.unsettled = std::abs(lag_ / from - 1);
}

/// The crank turns as fast as the road asks for, with what belts and tyres slip under the torque
/// that it gives there.
void Motion::drive(const Mode& mode) {
    const double free = geared_speed(mode, moment_.road_speed);
    const double inertia = mass(mode);
    settle([&] {
        const double before = moment_.torque;
        set_driveline(mode, free);
        if (!ask(moment_.engine_speed, mode.pedal)) return true;
        moment_.torque = moment_.point.torque;
        if (crank_share_ != 0) moment_.torque -= taken_by_crank(inertia);
        const bool same =
            crank_share_ == 0 || std::abs(moment_.torque - before) <= settled * std::abs(before);
        return !follow(inertia) && same;
    });
    if (!moment_.answered) return;
    speed_up(mode);
    account(moment_.torque * moment_.engine_speed, 0);
}

/// Torque and pedal at which the thrust is what the road takes.
void Motion::keep_speed(const Mode& mode) {
    const double free = geared_speed(mode, moment_.road_speed);
    const double wanted = moment_.load.total() * radius(moment_.road_speed);
    const double inertia = mass(mode);
    settle([&] {
        set_driveline(mode, free);
        const double speed = moment_.engine_speed;
        const auto excess = [&](double torque) {
            return driveline::drive(car_.driveline, {speed, torque}, moment_.gear_state).torque -
                   wanted;
        };
        const double most = 10 * vehicle::usual_torque(car_) + std::abs(wanted);
        moment_.torque = numerics::find_root(excess, -most, most).x;
        return !follow(inertia);
    });
    moment_.passed = moment_.torque;
    if (!ask_torque(moment_.engine_speed, moment_.torque)) return;
    if (!moment_.point.outcome.answered()) {  // more than it has, or less than it can
        Mode at_end = mode;
        at_end.pedal = moment_.point.condition.opening;
        return drive(at_end);
    }
    account(moment_.torque * moment_.engine_speed, 0);
}

/// Out of gear, or on the way to the next one.
void Motion::roll(const Mode& mode) {
    const driveline::Shaft wheels =
        driveline::dragged(car_.driveline, moment_.gear_state, wheel_speed(0), losses_);
    const double inertia = mass(mode);
    reach_road(wheels, inertia);
    moment_.gripping_speed = geared_speed(mode, moment_.road_speed);
    moment_.acceleration = (moment_.thrust - moment_.load.total()) / inertia;
    if (mode.phase == Phase::shifting) {
        if (mode.lifted) moment_.fuel_flow = moment_.liquid_flow = 0;
        moment_.torque = 0;
        account(0, 0);
        return;
    }
    idle();
    account(0, 0);
    if (mode.phase != Phase::braking) return;
    const double brakes = std::max(0.0, (mode.deceleration + moment_.acceleration) * inertia);
    moment_.acceleration -= brakes / inertia;
    moment_.power[static_cast<std::size_t>(Energy::brakes)] = brakes * moment_.road_speed;
}

bool Motion::ask(double engine_speed, double pedal) {
    moment_.point = solver_.at({engine_speed, moment_.road_speed, pedal});
    return take_point();
}

/// The pedal that gives a torque; where none does, that end of its travel which comes nearest.
bool Motion::ask_torque(double engine_speed, double torque) {
    moment_.point = torque_.at({engine_speed, moment_.road_speed, 1}, torque);
    return take_point();
}

bool Motion::take_point() {
    const Outcome& outcome = moment_.point.outcome;
    moment_.answered = outcome.answered() || outcome.worst == beyond_throttle;
    if (!moment_.answered) return false;
    const engine::Work& work = moment_.point.work;
    moment_.fuel_flow = work.fuel_flow;
    moment_.liquid_flow = sprayed();
    moment_.power[static_cast<std::size_t>(Energy::fuel)] = work.fuel_power;
    return true;
}

/// kg/s of what the nozzles put in.
double Motion::sprayed() const {
    double sum = 0;
    const vehicle::Balance& balance = solver_.balance();
    for (const std::size_t part : layout_.pumps)
        car_.charge_path[part].part.visit([&]<class Part>(const Part& nozzle) {
            if constexpr (charge::Spraying<Part>)
                sum += nozzle
                           .spray(balance.stations()[part].inlet,
                                  balance.surroundings_of(balance.stations()[part]))
                           .flow;
        });
    return sum;
}

}  // namespace windwall::solve
