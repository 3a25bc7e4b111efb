#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <vector>

namespace windwall::solve {

/// Where full throttle is solved first: along the range of one gear from its end down, and at the
/// engine speed of one of these nodes other states of the driveline that show what the road speed
/// does, the one most unlike it first.
struct FullLoadPlan {
    std::size_t gear{};
    std::vector<double> nodes;  // along the gear's range, falling
    std::size_t at{};           // the node whose engine speed the others have
    std::vector<DrivelineState> others;
};

/// The gears by how fast the vehicle is in them, slowest first: with two boxes the count is not
/// that.
std::vector<std::size_t> gears_by_speed(const VehicleSolver& solver);

/// Nodes in the gear that a power, W at the flywheel, is expected to run out in.
FullLoadPlan plan_full_load(const VehicleSolver& solver, double power);

}  // namespace windwall::solve
