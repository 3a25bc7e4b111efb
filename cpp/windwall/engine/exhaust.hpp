#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Pipes and silencer behind the exhaust valves.
struct Exhaust {
    static constexpr std::string_view description = "Pipes and silencer behind the exhaust valves.";

    double back_pressure = 10e3;    // Pa above the weather
    std::optional<double> at_flow;  // kg/s

    /// Pressure above the weather in Pa at a gas flow in kg/s: with its square, and inversely
    /// with the density of the gas, which leaves hotter by what the charge came in hotter than at
    /// 25 degC. `usual_flow` stands in where no flow is stated.
    double rise(double flow, double ambient_pressure, double usual_flow,
                double charge_temperature) const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::engine
