#include "windwall/solve/full_throttle/top_speed.hpp"

#include "windwall/solve/point/guarded.hpp"

#include <algorithm>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// What no gear exceeds: there the engine turns no faster, and the tyres slip no less than this.
double fastest_turning(const VehicleSolver& solver) {
    double fastest = 0;
    for (std::size_t gear = 0; gear < solver.gears(); ++gear) {
        const GearRange& range = solver.gear_range(gear);
        fastest = std::max(fastest, solver.road_speed(range.at(range.end())));
    }
    return fastest;
}

}  // namespace

SharedEngine::SharedEngine(const vehicle::Vehicle& first, const vehicle::WhatIf& what_if,
                           Watch* watch)
    : solver_(first, what_if, watch), engine_(solver_), start_(solver_.point_solver().state()) {}

void SharedEngine::climb_and_run(TopSpeed& found) {
    const auto& run_up_length = solver_.vehicle().goal.run_up;
    found.curves = tractive_effort_curves(engine_, solver_);
    found.equilibrium = find_equilibrium_speed(solver_, engine_, found.curves);
    found.outcome = {Status::no_balance, {}, 0, 0};
    if (!found.equilibrium.full_throttle) return;
    found.outcome = found.equilibrium.full_throttle->point.outcome;
    if (!found.equilibrium.settled)
        found.outcome = {Status::not_converged, {}, 0, found.outcome.evaluations};
    if (!solver_.tyres_keep_shape(*found.equilibrium.full_throttle))
        found.outcome = {Status::out_of_range, outgrown_tyres, 0, found.outcome.evaluations};
    if (found.outcome.answered() && run_up_length)
        found.run_up = run_up(solver_, found.curves, start_gear(solver_, engine_),
                              found.equilibrium.road_speed, *run_up_length);
}

TopSpeed SharedEngine::brief_top_speed(const vehicle::Vehicle& vehicle) {
    solver_.carry(vehicle);
    solver_.point_solver().go_on_from(start_);
    TopSpeed found;
    if (engine_.answered()) {
        climb_and_run(found);
    } else {
        found.outcome = engine_.unanswered()->point.outcome;
    }
    found.unanswered = engine_.unanswered();
    found.points = solver_.point_solver().points();
    found.evaluations = solver_.point_solver().evaluations();
    return found;
}

TopSpeed SharedEngine::top_speed(const vehicle::Vehicle& vehicle) {
    TopSpeed found = brief_top_speed(vehicle);
    if (engine_.answered()) found.full_throttle_points = engine_.on_the_road(solver_);
    return found;
}

double SharedEngine::rough_speed(const vehicle::Vehicle& vehicle, double least) {
    if (!engine_.answered()) return 0;
    solver_.carry(vehicle);
    if (const double turning = fastest_turning(solver_); turning <= least) return turning;
    auto curves = tractive_effort_curves(engine_, solver_, Sampling::rough);
    const double speed = speed_on_curves(solver_, engine_, curves);
    if (speed <= least || !vehicle.goal.run_up) return speed;
    return run_up(solver_, curves, start_gear(solver_, engine_), speed, *vehicle.goal.run_up).speed;
}

TopSpeed top_speed(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if, Watch* watch) {
    return guarded([&] { return SharedEngine(vehicle, what_if, watch).top_speed(vehicle); },
                   [] { return TopSpeed{.outcome = broken_off}; });
}

double speed_of(const vehicle::Vehicle& vehicle) {
    const auto solve = [&] {
        const TopSpeed found = SharedEngine(vehicle).brief_top_speed(vehicle);
        return found.outcome.answered() ? found.speed() : nan;
    };
    return guarded(solve, [] { return nan; });
}

}  // namespace windwall::solve
