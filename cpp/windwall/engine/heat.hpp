#pragma once
#include "windwall/fields/row.hpp"

#include <span>
#include <string_view>

namespace windwall::engine {

/// Where fuel power goes beside the crank and the exhaust gas, in W.
struct Heat {
    double walls{};    // to head, barrel and exhaust port, rubbing not included
    double unburnt{};  // leaves as carbon monoxide, hydrogen and fuel that never burnt
};

/// What the heat to the chamber goes by beside the heat released.
struct WallState {
    double retard{};            // rad after the spark of best torque
    double speed_share = 1;     // engine speed over that of full power
    double pressure_share = 1;  // charge pressure over that of the standard atmosphere
};

/// The charge that passes, here and at full power.
struct Outflow {
    double flow{}, full_flow{};           // kg/s
    double engine_speed{}, full_speed{};  // rad/s
    double swept_volume{};                // m3
};

/// How the burnt charge heats the engine: in the chamber, and on its way out through the port.
struct Walls {
    static constexpr std::string_view description = "How the burnt charge heats head and barrel.";

    double share = 0.27;
    double port_keeps = 0.80;

    /// Share of the heat released that reaches head and barrel inside the cylinder.
    double chamber_share(const WallState& state) const noexcept;
    /// K that gas leaves the port at, were it so hot after its expansion; the head in K.
    double behind_port(double expanded, double head_temperature, const Outflow& out) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Heat to the chamber over that at the spark of best torque, for a spark `retard` rad later: less
/// of the burning is near the top, where the gas is hottest. Fitted to single-zone cycles with the
/// wall law of Hohenberg, 0 to 45 degrees; an earlier spark is given the heat of the best one.
double late_spark_wall_share(double retard) noexcept;

}  // namespace windwall::engine
