#pragma once
#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/vehicle.hpp"

namespace windwall::vehicle {

/// Mass in kg that a thrust at the road accelerates: the vehicle, its wheels, and what turns with
/// them, each as its inertia over the square of the radius it is felt at. Behind a slipping clutch,
/// or a variator that shifts at one engine speed, neither crank nor blower accelerates.
double accelerated_mass(const Vehicle& vehicle, driveline::GearState gear_state,
                        double rolling_radius,
                        driveline::Behind behind = driveline::Behind::crank) noexcept;

/// Moment of inertia of the crank, and of the blowers that it turns, at its speed, kg m2.
double inertia_at_crank(const Vehicle& vehicle) noexcept;

/// Engine speed in rad/s at which the start happens: what the clutch holds while it slips, or where
/// the belt of a variator takes hold; four tenths of the limit where neither is there.
double launch_speed(const Vehicle& vehicle) noexcept;

/// Highest engine speed in rad/s: the engine's limit.
double speed_limit(const Vehicle& vehicle) noexcept;

/// Torque of an engine of this size at a mean pressure of 1 MPa, N m; common practice. Good for a
/// first guess only.
double usual_torque(const Vehicle& vehicle) noexcept;

}  // namespace windwall::vehicle
