#pragma once
#include "windwall/charge/blower_limits.hpp"
#include "windwall/charge/compression.hpp"
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

struct PositiveBlower {
    static constexpr std::string_view kind = "positive_blower";
    static constexpr std::string_view description =
        "Blower that moves a fixed volume a turn: Roots, or screw with a built-in volume ratio.";
    /// Rotor speed to which fill_loss and friction_torque_per_speed refer, rad/s (10 000 rpm).
    static constexpr double reference_speed = 10000 * 2 * std::numbers::pi / 60;

    double displacement{};  // m3 a revolution
    double drive_ratio{};   // rotor turns a crankshaft turn
    double built_in_ratio = 1;
    double leak_area = 8e-6;               // m2, effective
    double friction_torque = 0.25;         // N m
    double friction_torque_per_speed = 0;  // N m at the reference speed
    double friction_to_charge = 0.5;
    double fill_loss = 0;  // at the reference speed
    double belt_efficiency = 0.96;
    std::optional<double> case_area;                 // m2
    double case_exchange = 1;                        // of the heat from the charge to the case
    std::optional<double> case_conductance;          // W/K, charge to case
    std::optional<double> case_to_air;               // W/K, case to the air under the bodywork
    double mount_conductance = 1;                    // W/K, case to what it is bolted to
    double mount_temperature = 353.15;               // K
    std::optional<double> case_temperature;          // K
    double case_mass = 4;                            // kg of aluminium
    double evaporated_inside = 0.6;                  // of what equilibrium would evaporate
    double film_behind = 0.7;                        // of the drops that are left
    double rotor_inertia = 1e-3;                     // kg m2
    std::optional<double> rated_speed;               // rad/s
    std::optional<double> rated_outlet_temperature;  // K
    std::optional<double> rated_pressure_ratio;

    /// What the blower does with the delivered gas flow of `in` against an outlet pressure.
    Compression compress(const media::Stream& in, double outlet_pressure,
                         const Surroundings& surroundings) const noexcept;
    /// Gas the rotors take in at a speed in rad/s where nothing leaks, kg/s.
    double swept_flow(const media::Stream& in, double rotor_speed) const noexcept;
    /// The case, between the charge at its mean temperature and the air under the bodywork.
    std::array<media::LumpedNode, 1> thermal_nodes(const media::Stream& in, double outlet_pressure,
                                                   const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
    static constexpr auto class_limits = blower_limits;
    static constexpr auto class_cautions = blower_cautions;
};

}  // namespace windwall::charge
