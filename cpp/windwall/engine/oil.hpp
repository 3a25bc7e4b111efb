#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/thermal_node.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// The oil, heated by friction and by the walls, and what its thickness does to friction.
struct Oil {
    static constexpr std::string_view description =
        "The oil: warm by friction and walls, thick where it is cold.";

    std::optional<double> temperature;  // K; at equilibrium where not stated
    double known_temperature = 373.15;  // K, where the head's was known
    double wall_share = 0.08;           // of the heat to the walls
    double viscosity_exponent = 0.30;
    double hot_temperature = 373.15;  // K, where the friction constants hold
    double mass = 2;                  // kg

    /// K, from the heat that reaches the oil and the flow of what cools, both over those where its
    /// temperature was known.
    double equilibrium(double heat_share, double flow_share, double sink_temperature,
                       double known_sink_temperature) const noexcept;
    /// The oil as a lump, from the heat that reaches it here and where its temperature was known.
    media::LumpedNode node(double heat, double known_heat, double flow_share,
                           double sink_temperature, double known_sink_temperature) const noexcept;
    /// Factor on the friction of oil films at an oil temperature in K.
    double friction_share(double oil_temperature) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Viscosity of SAE 30 oil over that at another temperature; K. Form of Seireg and Dandage,
/// exp(1360/(T in degF + 95)), not read there; held against the grades of SAE J300 and ISO 3448.
double oil_viscosity_ratio(double temperature, double other_temperature) noexcept;

}  // namespace windwall::engine
