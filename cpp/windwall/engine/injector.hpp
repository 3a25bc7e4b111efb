#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// One injection a cycle from each injector.
struct Injection {
    double fuel_flow{};      // kg/s through all injectors
    double pressure_drop{};  // Pa, rail less manifold
    double pulse_width{};    // s, dead time included
    double duty{};           // share of the cycle the injector is held open; above 1 it cannot be
    bool over_rated{};       // duty above the rated one
};

/// Injectors of the engine's own fuel system; a carburetted engine has none.
struct Injector {
    static constexpr std::string_view description = "Injectors of the engine's own fuel system.";

    double rated_flow{};            // m3/s each
    double rated_pressure = 300e3;  // Pa
    double rail_pressure = 300e3;   // Pa above the weather, or above the manifold if referenced
    bool referenced = true;
    double dead_time = 1.0e-3;  // s
    double rated_duty = 0.85;
    std::optional<double> count;

    /// `usual_count` stands in where no count is stated.
    Injection inject(double fuel_flow, double engine_speed, double fuel_density,
                     double manifold_pressure, double ambient_pressure,
                     double usual_count) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Pulse width in s of one injection a cycle: `fuel_flow` kg/s shared by `count` injectors of
/// `rated_flow` m3/s at `rated_pressure` Pa; the flow goes with the root of the pressure drop.
double injector_pulse_width(double fuel_flow, double engine_speed, double rated_flow,
                            double rated_pressure, double pressure_drop, double fuel_density,
                            double dead_time, double count) noexcept;

/// Share of the four-stroke cycle that a pulse takes.
double injector_duty(double pulse_width, double engine_speed) noexcept;

}  // namespace windwall::engine
