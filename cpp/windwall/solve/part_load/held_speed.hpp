#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/part_load/held_torque.hpp"

#include <cstddef>
#include <optional>

namespace windwall::solve {

/// What `worst` says where the engine would turn slower than it idles, or faster than it may.
inline constexpr std::string_view beyond_gears = "gears";
/// What `worst` says where the tyres do not hold what the road asks for.
inline constexpr std::string_view beyond_grip = "grip";

/// Slowest that the engine turns with the clutch in, rad/s: idling, or where what takes hold by
/// speed does so.
double slowest_geared(const vehicle::Vehicle& car);

/// The pedal that holds a road speed. The workspace of one thread: speeds asked one after the other
/// are each solved from the last.
class HeldSpeed {
public:
    explicit HeldSpeed(const vehicle::Vehicle& vehicle)
        : solver_(vehicle), held_(solver_.point_solver()) {}

    /// At a road speed in m/s, in a gear counted from 0; else in the highest that holds it, or
    /// where none does, as the lowest one ends in which the engine can turn.
    FullThrottlePoint at(double road_speed, std::optional<std::size_t> gear = {});

    PointSolver& point_solver() noexcept { return solver_.point_solver(); }

private:
    FullThrottlePoint in_gear(double road_speed, std::size_t gear);
    std::optional<DrivelineState> turning(double road_speed, std::size_t gear);
    std::optional<double> torque_for(const DrivelineState& state, double road_speed) const;

    VehicleSolver solver_;
    HeldTorque held_;
};

}  // namespace windwall::solve
