#pragma once
#include "windwall/driveline/train.hpp"

#include <cstddef>
#include <optional>

namespace windwall::driveline {

/// Engine speed, rad/s, that the train holds while its clutch or its belt slips at the start, for
/// an engine that gives this torque there, N m; nothing where no part can slip. A centrifugal
/// clutch holds the speed at which it just carries the torque, and so does a belt drive with
/// weights where the train has nothing else that slips.
std::optional<double> launch_speed(const Train& train, double torque) noexcept;

/// What a start is judged by.
struct Start {
    Shaft crank;               // what the engine gives at the speed held while the clutch slips
    double grip_torque{};      // N m at the wheels, beyond which the tyres spin
    double vehicle_inertia{};  // kg m2: mass times the square of the rolling radius, and the wheels
    double resistance{};       // N m at the wheels, that the road takes
};

/// Angular acceleration of the wheels, rad/s2, while the clutch slips: what gets through it and
/// the driveline, no more than the tyres hold, over all that speeds up.
double launch_acceleration(const Train& train, const Start& start, GearState gear_state) noexcept;

/// The gear that gets the vehicle off the line best: that of the greatest acceleration; where
/// several do as well within one part in a thousand, the one with the largest reduction, whose
/// clutch is locked first and heated least.
std::size_t launch_gear(const Train& train, const Start& start) noexcept;

}  // namespace windwall::driveline
