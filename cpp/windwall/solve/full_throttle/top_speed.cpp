#include "windwall/solve/full_throttle/top_speed.hpp"

#include "windwall/solve/point/guarded.hpp"

namespace windwall::solve {
namespace {

void climb_and_run(VehicleSolver& solver, const FullLoadCurve& engine, TopSpeed& found) {
    const auto& run_up_length = solver.vehicle().goal.run_up;
    found.curves = tractive_effort_curves(engine, solver);
    found.equilibrium = find_equilibrium_speed(solver, engine, found.curves);
    found.outcome = {Status::no_balance, {}, 0, 0};
    if (!found.equilibrium.full_throttle) return;
    found.outcome = found.equilibrium.full_throttle->point.outcome;
    if (!found.equilibrium.settled)
        found.outcome = {Status::not_converged, {}, 0, found.outcome.evaluations};
    if (!solver.tyres_keep_shape(*found.equilibrium.full_throttle))
        found.outcome = {Status::out_of_range, outgrown_tyres, 0, found.outcome.evaluations};
    if (found.outcome.answered() && run_up_length)
        found.run_up = run_up(solver, found.curves, start_gear(solver, engine),
                              found.equilibrium.road_speed, *run_up_length);
}

TopSpeed solve(VehicleSolver solver) {
    TopSpeed found;
    const FullLoadCurve engine(solver);
    if (engine.answered()) {
        climb_and_run(solver, engine, found);
    } else {
        found.outcome = engine.unanswered()->point.outcome;
    }
    found.full_throttle_points = engine.points();
    found.unanswered = engine.unanswered();
    found.points = solver.point_solver().points();
    found.evaluations = solver.point_solver().evaluations();
    return found;
}

}  // namespace

TopSpeed top_speed(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if,
                   const Observer& observer) {
    return guarded([&] { return solve(VehicleSolver(vehicle, what_if, observer)); },
                   [] { return TopSpeed{.outcome = broken_off}; });
}

}  // namespace windwall::solve
