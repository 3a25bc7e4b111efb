#pragma once
#include "windwall/fields/row.hpp"

#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// What a real cycle loses on the fuel-air cycle.
struct Combustion {
    static constexpr std::string_view description =
        "What a real cycle keeps of the fuel-air cycle.";

    double real_cycle_factor = 0.85;
    bool trims_for_injected_fuel = true;
    std::optional<double> trim_time;                     // s
    double burn_duration = 60 * std::numbers::pi / 180;  // rad

    /// Indicated work over the lower heating value of the fuel, at a spark `retard` rad after the
    /// one of best torque.
    double efficiency(double compression_ratio, double equivalence_ratio,
                      double retard) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Indicated torque over that at the spark of best torque, for a spark `retard` rad later, or
/// earlier when negative. Fitted to 30 degrees; held beyond 60.
double spark_penalty(double retard) noexcept;

}  // namespace windwall::engine
