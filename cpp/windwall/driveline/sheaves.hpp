#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/thermal_node.hpp"

#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// Rubber with its cords, J/(kg K); no source, +-300.
inline constexpr double belt_heat_capacity = 1700;
/// Of what a running belt gives to the air for a kelvin, what is left where nothing turns; from a
/// strip and two discs that stand, 5 to 8 W/(m2 K) of some 60; estimate.
inline constexpr double standing_belt_share = 0.1;

/// A belt of a mass in kg, warmed by the watts it loses, that gives a running W/K to the air.
inline media::LumpedNode belt_node(double mass, double loss, double to_air,
                                   double air_temperature) noexcept {
    return {.name = "belt",
            .heat_capacity = mass * belt_heat_capacity,
            .heat = loss,
            .cold_conductance = to_air,
            .cold_temperature = air_temperature,
            .still = media::Exchange{standing_belt_share * to_air, air_temperature}};
}

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

/// Where a belt runs on both sheaves.
struct PitchRadii {
    double driving{};  // m
    double driven{};
};

/// Sheave geometry: where the belt runs, how far the sheaves move for it, and what holds it there.
struct Sheaves {
    static constexpr std::string_view description =
        "Sizes of the sheaves, and what presses them together where no weights are stated.";
    double centre_distance{};                           // m
    double belt_length{};                               // m, pitch
    std::optional<double> clamp_force;                  // N
    std::optional<double> travel;                       // m, of the driving sheave
    double groove_angle = 26 * std::numbers::pi / 180;  // rad, included
    double friction = 0.35;

    /// Where the belt runs at a reduction.
    PitchRadii radii(double ratio) const noexcept;
    /// How far the moving half of a sheave goes while the belt climbs by a radius, both in m.
    double movement(double radius) const noexcept;
    /// The reduction that the driving sheave gets down to from a larger one: `high`, or what its
    /// travel leaves.
    double reached(double low, double high) const noexcept;
    /// Whether the belt is so short that both sheaves have room at a reduction.
    bool fits(double ratio) const noexcept;
    /// Torque at the driving sheave that a force along it holds at a reduction, N m.
    double capacity(double force, double ratio) const noexcept;
    std::optional<fields::Violation> check() const;
    static std::span<const fields::Row> rows();
};

/// Greatest torque, N m, of a belt on a pair of sheaves of pitch radius m, pressed with an axial
/// force N: 2 mu F r / cos(beta), beta half the groove angle.
double clamp_torque(double friction, double force, double radius, double half_angle) noexcept;

}  // namespace windwall::driveline
