#pragma once
#include "windwall/fields/row.hpp"

#include <span>
#include <string_view>

namespace windwall::driveline {

/// What closes the driven sheave: a spring, and a helix over which the torque screws the moving
/// half against the belt.
struct TorqueCam {
    static constexpr std::string_view description =
        "Spring and helix that close the driven sheave of a belt drive.";
    double spring_preload{};    // N, with the sheave closed
    double spring_rate{};       // N/m
    double torsion{};           // N m, by which the spring is wound up
    double cam_radius{};        // m, mean
    double cam_angle{};         // rad, from the plane across the shaft
    double torque_share = 0.5;  // of the torque, that enters through the half on the helix

    /// N, for a torque at the driven sheave in N m; it drives, or is 0. `opened`, m, is how far the
    /// belt has drawn the sheave apart.
    double closing_force(double torque, double opened) const noexcept;
    /// What each N m of it adds, 1/m.
    double force_per_torque() const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline
