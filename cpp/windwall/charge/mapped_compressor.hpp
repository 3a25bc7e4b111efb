#pragma once
#include "windwall/charge/blower_limits.hpp"
#include "windwall/charge/characteristic.hpp"
#include "windwall/charge/compression.hpp"
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

/// A compressor that turns with the crank and works by the speed of its impeller.
struct MappedCompressor {
    static constexpr std::string_view kind = "mapped_compressor";
    static constexpr std::string_view description =
        "Centrifugal compressor driven by the crank, from its map or from its impeller alone.";

    double drive_ratio{};                   // rotor turns a crankshaft turn, step-up gear included
    double impeller_diameter{};             // m
    fields::Columns map;                    // corrected speed, flow, pressure ratio, efficiency
    double reference_temperature = 298.15;  // K, of the map
    double reference_pressure = 100e3;      // Pa
    double slip_factor = 0.9;
    double efficiency = 0.72;
    double flow_coefficient = 0.12;
    double mechanical_efficiency = 0.95;
    double belt_efficiency = 0.96;
    double evaporated_inside = 0.6;                  // of what equilibrium would evaporate
    double rotor_inertia = 3e-5;                     // kg m2
    std::optional<double> rated_speed;               // rad/s
    std::optional<double> rated_outlet_temperature;  // K
    std::optional<double> rated_pressure_ratio;

    /// What it does with the gas flow of `in`, and the flow at which it reaches the outlet
    /// pressure.
    Compression compress(const media::Stream& in, double outlet_pressure,
                         const Surroundings& surroundings) const noexcept;
    /// Flow and work at the reference state for a rotor speed and a pressure ratio.
    CharacteristicReading read(const media::Stream& in, double rotor_speed,
                               double outlet_pressure) const noexcept;

    std::optional<fields::Violation> check() const;
    static std::span<const fields::Row> rows();
    static constexpr auto class_limits = blower_limits;
    static constexpr auto class_cautions = blower_cautions;
};

}  // namespace windwall::charge
