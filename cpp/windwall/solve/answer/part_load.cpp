#include "windwall/solve/answer/part_load.hpp"

#include "windwall/solve/answer/cautions.hpp"
#include "windwall/solve/answer/recorder.hpp"
#include "windwall/solve/part_load/held_speed.hpp"
#include "windwall/solve/part_load/idle.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/vehicle/rotating.hpp"

namespace windwall::solve {
namespace {

/// How it ended and where, with an answer or without.
PartLoadResult ended(const Point& point) {
    PartLoadResult result;
    result.ending = ending(point.outcome);
    result.engine_speed = point.condition.engine_speed;
    result.road_speed = point.condition.road_speed;
    result.opening = point.condition.opening;
    if (point.work.engine_speed > 0) result.torque = point.torque;
    return result;
}

/// What a point just solved comes to, once it is described.
void explain(PointSolver& solver, const Point& point, PartLoadResult& result) {
    sum_up(*result.point, result);
    result.cautions = point_cautions(solver.balance(), point, *result.point);
    // So far below the knock anchor nothing knocks, and the rule need not be right.
    if (result.point->manifold.boost < 0)
        std::erase_if(result.cautions,
                      [](const Caution& one) { return one.about == CautionKind::knock_pressure; });
    for (Caution& other : second_balance(solver)) {
        result.hotter_charge = other.found;
        result.cautions.push_back(std::move(other));
    }
}

PartLoadResult held(const vehicle::Vehicle& vehicle, double road_speed,
                    std::optional<std::size_t> gear) {
    HeldSpeed holder(vehicle);
    const FullThrottlePoint found = holder.at(road_speed, gear);
    PartLoadResult result = ended(found.point);
    result.gear = static_cast<long>(found.gear) + 1;
    if (!found.point.outcome.answered()) return result;
    describe(holder.point_solver().balance(), found, result.point.emplace());
    explain(holder.point_solver(), found.point, result);
    return result;
}

PartLoadResult idling(const vehicle::Vehicle& vehicle, std::optional<double> engine_speed) {
    PointSolver solver(vehicle);
    HeldTorque holder(solver);
    Point found = idle(holder, vehicle, engine_speed.value_or(idle_speed(vehicle)));
    if (found.outcome.answered()) found.torque = 0;  // what is left of it is rounding
    PartLoadResult result = ended(found);
    if (!found.outcome.answered()) return result;
    describe(solver.balance(), found, result.point.emplace());
    explain(solver, found, result);
    return result;
}

PartLoadResult broken(double engine_speed, double road_speed) {
    PartLoadResult result;
    result.ending = ending(broken_off);
    result.engine_speed = engine_speed;
    result.road_speed = road_speed;
    return result;
}

Curve recorded_speeds(const vehicle::Vehicle& vehicle, std::span<const double> road_speeds,
                      std::optional<std::size_t> gear) {
    HeldSpeed holder(vehicle);
    // Where the first speed has no gear, there are stations to take the columns from all the same.
    holder.point_solver().at({vehicle::launch_speed(vehicle), 0, 1});
    Recorder recorder;
    for (const double speed : road_speeds)
        recorder.add(holder.point_solver().balance(), holder.at(speed, gear));
    return recorder.take();
}

Curve recorded_idles(const vehicle::Vehicle& vehicle, std::span<const double> engine_speeds) {
    PointSolver solver(vehicle);
    HeldTorque holder(solver);
    Recorder recorder;
    for (const double speed : engine_speeds)
        recorder.add(solver.balance(), idle(holder, vehicle, speed));
    return recorder.take();
}

}  // namespace

PartLoadResult answer_hold_speed(const vehicle::Vehicle& vehicle, double road_speed,
                                 std::optional<std::size_t> gear) {
    return guarded([&] { return held(vehicle, road_speed, gear); },
                   [&] { return broken(0, road_speed); });
}

PartLoadResult answer_idle(const vehicle::Vehicle& vehicle, std::optional<double> engine_speed) {
    return guarded([&] { return idling(vehicle, engine_speed); },
                   [&] { return broken(engine_speed.value_or(idle_speed(vehicle)), 0); });
}

Curve hold_speed_curve(const vehicle::Vehicle& vehicle, std::span<const double> road_speeds,
                       std::optional<std::size_t> gear) {
    return guarded([&] { return recorded_speeds(vehicle, road_speeds, gear); },
                   [&] { return broken_curve(gear.value_or(0)); });
}

Curve idle_curve(const vehicle::Vehicle& vehicle, std::span<const double> engine_speeds) {
    return guarded([&] { return recorded_idles(vehicle, engine_speeds); },
                   [&] { return broken_curve(0); });
}

}  // namespace windwall::solve
