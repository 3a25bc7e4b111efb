#pragma once

namespace windwall::road {

// The wind triangle of 40 CFR 1037.528: speeds in m/s over the ground, `angle` in rad between where
// the wind comes from and where the vehicle goes, 0 for a pure headwind.

/// Speed of the air past the vehicle, m/s, never negative.
double air_speed(double speed, double wind, double angle) noexcept;

/// Angle of that air to the direction of travel, rad, in (-pi, pi].
double yaw_angle(double speed, double wind, double angle) noexcept;

}  // namespace windwall::road
