#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <vector>

namespace windwall::solve {

/// Where full throttle is solved first: at a few engine speeds, each at the road speed that usually
/// goes with it, and at one of them at other road speeds, which show what the wind does. Nothing in
/// it depends on body, gears or tyres.
struct FullLoadPlan {
    std::vector<double> engine_speeds;  // falling, from the ceiling down to the launch speed
    std::size_t at{};                   // the node whose engine speed the others have
    double road_per_turn{};             // m/s for each rad/s
    std::vector<double> other_roads;    // m/s, the one most unlike it first

    double road_speed(double engine_speed) const noexcept { return road_per_turn * engine_speed; }
};

/// Up to the solver's ceiling.
FullLoadPlan plan_full_load(const VehicleSolver& solver);

}  // namespace windwall::solve
