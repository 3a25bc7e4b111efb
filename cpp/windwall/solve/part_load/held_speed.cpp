#include "windwall/solve/part_load/held_speed.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/part_load/idle.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double fastest_air = 500;  // m/s, as at full throttle
constexpr double agreement = 1e-9;   // of the road speed
constexpr int most_turns = 8;        // of slipping belts, each leaves little
constexpr double most_torque = 64;   // of the usual one: beyond it the tyres or a clutch slip

FullThrottlePoint no_answer(double road_speed, std::size_t gear, std::string_view why) {
    FullThrottlePoint none;
    none.gear = gear;
    none.road_speed = none.point.condition.road_speed = road_speed;
    none.point.outcome = {Status::out_of_range, why, 0, 0};
    return none;
}

}  // namespace

double slowest_geared(const vehicle::Vehicle& car) {
    const double launch = vehicle::launch_speed(car);
    const bool by_speed = std::ranges::any_of(car.driveline, [](const auto& entry) {
        return entry.part.template as<driveline::CentrifugalClutch>() != nullptr;
    });
    return by_speed || driveline::variator(car.driveline) ? launch
                                                          : std::min(launch, idle_speed(car));
}

FullThrottlePoint HeldSpeed::at(double road_speed, std::optional<std::size_t> gear) {
    if (gear) return in_gear(road_speed, *gear);
    FullThrottlePoint last = no_answer(road_speed, 0, beyond_gears);
    for (std::size_t used = solver_.gears(); used-- > 0;) {
        const FullThrottlePoint held = in_gear(road_speed, used);
        if (held.point.outcome.answered()) return held;
        if (held.point.outcome.worst != beyond_gears) last = held;
    }
    return last;
}

/// How the driveline turns in a gear at a road speed, where it can.
std::optional<DrivelineState> HeldSpeed::turning(double road_speed, std::size_t gear) {
    const GearRange& range = solver_.gear_range(gear);
    const auto excess = [&](const DrivelineState& state) {
        return solver_.road_speed(state) - road_speed;
    };
    if (excess(range.at(range.end())) < 0) return std::nullopt;
    if (excess(range.at(0)) <= 0) {
        const auto along =
            numerics::find_root([&](double s) { return excess(range.at(s)); }, 0, range.end());
        return range.at(along.x);
    }
    const double lowest = slowest_geared(solver_.vehicle()), launch = range.at(0).engine_speed;
    const auto below = [&](double speed) { return DrivelineState{speed, range.at(0).gear_state}; };
    if (lowest >= launch || excess(below(lowest)) > 0) return std::nullopt;
    const auto speed =
        numerics::find_root([&](double w) { return excess(below(w)); }, lowest, launch);
    return below(speed.x);
}

/// N m at the flywheel that push as hard as the road holds back.
std::optional<double> HeldSpeed::torque_for(const DrivelineState& state, double road_speed) const {
    const double load = solver_.load(road_speed).total();
    const auto excess = [&](double torque) {
        return solver_.tractive_state(state, torque, road_speed).thrust - load;
    };
    const double usual = vehicle::usual_torque(solver_.vehicle());
    double low = -usual, high = usual;
    while (excess(high) < 0)
        if ((high *= 2) > most_torque * usual) return std::nullopt;
    while (excess(low) > 0)
        if ((low *= 2) < -most_torque * usual) return std::nullopt;
    return numerics::find_root(excess, low, high).x;
}

/// A belt that slips under its torque lets the engine turn faster for the same road speed.
FullThrottlePoint HeldSpeed::in_gear(double road_speed, std::size_t gear) {
    double without_slip = road_speed;
    DrivelineState state;
    double torque = 0;
    for (int turn = 0; turn < most_turns; ++turn) {
        const auto turns = turning(without_slip, gear);
        if (!turns) return no_answer(road_speed, gear, beyond_gears);
        state = *turns;
        const auto pushes = torque_for(state, road_speed);
        if (!pushes) return no_answer(road_speed, gear, beyond_grip);
        torque = *pushes;
        const double reached = solver_.tractive_state(state, torque, road_speed).road_speed;
        if (std::abs(reached - road_speed) <= agreement * road_speed) break;
        without_slip *= road_speed / reached;
    }
    FullThrottlePoint held;
    held.point = held_.at({state.engine_speed, std::min(road_speed, fastest_air), 0}, torque);
    static_cast<TractiveState&>(held) =
        solver_.tractive_state(state, held.point.torque, road_speed);
    held.road_speed = road_speed;
    held.gear = gear;
    held.position = state.gear_state.position;
    held.load = solver_.load(road_speed);
    return held;
}

}  // namespace windwall::solve
