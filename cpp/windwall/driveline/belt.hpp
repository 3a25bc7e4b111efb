#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/shaft.hpp"
#include "windwall/driveline/sheaves.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

enum class BeltSection { flat, vee, toothed };

/// Tension of the tight strand over that of the slack one where a belt begins to slip as a whole,
/// both less the belt's own centrifugal tension (Euler and Eytelwein): exp(mu wrap / sin(beta)).
/// Half the groove angle; a quarter turn for a flat belt. Radians.
double belt_tension_ratio(double friction, double wrap, double half_angle) noexcept;

/// Pull, N, at which a belt slips whose two strands together are stretched to `strands` N; `linear
/// density` in kg/m, speed in m/s. Nothing is left where the belt flies off its wheels.
double belt_pull(double strands, double linear_density, double speed,
                 double tension_ratio) noexcept;

/// A belt of fixed ratio.
struct Belt {
    static constexpr std::string_view kind = "belt";
    static constexpr std::string_view description = "Flat, V or toothed belt on two pulleys.";

    BeltSection section = BeltSection::vee;
    double diameter_front{};  // m, pitch
    double diameter_rear{};   // m, pitch
    double efficiency = 0.96;
    double drag_torque = 0.1;       // N m
    double creep = 0.01;            // share of speed
    std::optional<double> tension;  // N in each strand at rest
    double centre_distance = 0.4;   // m
    double friction = 0.3;
    double groove_angle = 0.6632251157578453;  // rad, included (38 deg)
    double linear_density = 0.1;               // kg/m
    double inertia = 0.003;                    // kg m2
    double to_air = 12;                        // W/K

    std::size_t gears() const noexcept { return 1; }
    double ratio(GearState) const noexcept { return diameter_rear / diameter_front; }
    /// Torque beyond the capacity does not get through; what is left over heats the belt.
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    std::optional<double> holds(double speed, GearState) const noexcept { return capacity(speed); }
    /// Torque at the front pulley, N m, from which on the belt slips as a whole at a speed of the
    /// front pulley in rad/s; nothing where its tension is not stated, or where it has teeth.
    std::optional<double> capacity(double speed) const noexcept;
    /// Share of speed lost to creep; none where it has teeth.
    double slip_share(const Shaft& in, GearState gear_state) const noexcept;
    /// The belt, warmed by the watts it loses.
    std::array<media::LumpedNode, 1> thermal_nodes(double loss,
                                                   double air_temperature) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline

template <>
struct windwall::fields::Names<windwall::driveline::BeltSection> {
    static constexpr std::array<std::string_view, 3> names{"flat", "vee", "toothed"};
};
