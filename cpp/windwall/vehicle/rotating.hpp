#pragma once
#include "windwall/driveline/stance.hpp"
#include "windwall/vehicle/vehicle.hpp"

namespace windwall::vehicle {

/// Mass in kg that a thrust at the road accelerates in a gear: the vehicle, its wheels, and what
/// turns with the crank, each as its inertia over the square of the radius it is felt at.
double accelerated_mass(const Vehicle& vehicle, driveline::Stance stance,
                        double rolling_radius) noexcept;

/// The same while a variator shifts at one engine speed: nothing in front of its belt accelerates.
double accelerated_mass_while_shifting(const Vehicle& vehicle, driveline::Stance stance,
                                       double rolling_radius) noexcept;

/// Engine speed in rad/s that the clutch holds while it slips at the start.
double launch_speed(const Vehicle& vehicle) noexcept;

/// Highest engine speed in rad/s: the engine's limit.
double speed_limit(const Vehicle& vehicle) noexcept;

}  // namespace windwall::vehicle
