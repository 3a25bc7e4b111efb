#pragma once
#include "windwall/fields/row.hpp"

#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// Rubber with its cords, J/(kg K); no source, +-300.
inline constexpr double belt_heat_capacity = 1700;

/// What a belt that runs over two wheels wraps: radii in m, angles in rad.
struct Wraps {
    double driving{};
    double driven{};
};
Wraps belt_wraps(double driving_radius, double driven_radius, double centre_distance) noexcept;

/// Pitch length, m, of an open belt over two wheels; the radii differ by less than the distance.
double belt_length(double driving_radius, double driven_radius, double centre_distance) noexcept;

/// The driven radius, m, that a belt of this length leaves to a driving radius; held where the belt
/// is too short or too long for it.
double driven_radius(double driving_radius, double centre_distance, double length) noexcept;

/// The driving radius, m, at which a belt of this length has a reduction.
double driving_radius(double ratio, double centre_distance, double length) noexcept;

/// Sheave geometry and what presses the sheaves together: how much torque the belt holds.
struct Sheaves {
    static constexpr std::string_view description =
        "Sizes of the sheaves and the force that presses them together.";
    double centre_distance{};                           // m
    double belt_length{};                               // m, pitch
    double clamp_force{};                               // N
    double groove_angle = 26 * std::numbers::pi / 180;  // rad, included
    double friction = 0.35;

    /// Torque at the driving sheave that the clamp force holds at a reduction, N m.
    double capacity(double ratio) const noexcept;
    std::optional<fields::Violation> check() const;
    static std::span<const fields::Row> rows();
};

/// Greatest torque, N m, of a belt on a pair of sheaves of pitch radius m, pressed with an axial
/// force N: 2 mu F r / cos(beta), beta half the groove angle.
double clamp_torque(double friction, double force, double radius, double half_angle) noexcept;

}  // namespace windwall::driveline
