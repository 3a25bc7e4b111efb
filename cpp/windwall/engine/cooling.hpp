#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// What carries the heat of the head away, and what drives it.
enum class CoolingBy { fan, ram_air, liquid };

/// What a head's temperature follows from.
struct HeadState {
    double charge_flow{};         // kg/s of gas through the cylinders
    double charge_temperature{};  // K
    double equivalence_ratio{};
    double engine_speed{};     // rad/s, of the fan
    double road_speed{};       // m/s, of the ram air
    double air_density{};      // kg/m3, of the cooling air
    double air_temperature{};  // K
};

/// The head between the gas and what cools it: two resistances in series, known at one point.
struct Cooling {
    static constexpr std::string_view description =
        "Cooling of head and oil, known at one point of the engine without a blower.";

    CoolingBy by = CoolingBy::fan;
    double known_head_temperature = 473.15;    // K
    double known_air_temperature = 298.15;     // K
    std::optional<double> known_engine_speed;  // rad/s
    double known_manifold_pressure = 101325;   // Pa absolute
    double known_charge_temperature = 298.15;  // K
    double known_road_speed = 25;              // m/s
    double warm_air_share = 0;                 // of the cooling air, from under the bodywork
    double coolant_temperature = 363.15;       // K
    double gas_temperature = 894;              // K
    std::optional<double> pull_time;           // s
    double temperature_before = 403.15;        // K, of the head before the pull
    double head_mass = 9;                      // kg of aluminium, all heads and barrels
    double block_mass = 15;                    // kg of aluminium

    /// Temperature of the head, K, where it was `known` at known_head_temperature.
    double head_temperature(const HeadState& here, const HeadState& known) const noexcept;
    /// The head as a lump, where `known_heat` W went through it at the known point; both its
    /// conductances go with the flows alone.
    media::LumpedNode head_node(const HeadState& here, const HeadState& known,
                                double known_heat) const noexcept;
    /// Temperature of the head, K, `pull_time` after it left temperature_before.
    double head_in_pull(const HeadState& here, const HeadState& known,
                        double known_heat) const noexcept;
    /// Flow of what cools over that at the known point, at least a tenth; 1 for a liquid.
    double flow_share(const HeadState& here, const HeadState& known) const noexcept;
    /// K, of what takes the heat.
    double sink_temperature(double air_temperature) const noexcept {
        return by == CoolingBy::liquid ? coolant_temperature : air_temperature;
    }
    /// Whether what cools takes heat and gives none back: a thermostat shuts while it is colder.
    bool only_cools() const noexcept { return by == CoolingBy::liquid; }
    /// W/K from metal to the air around it while nothing turns, where `known_heat` W left it at a
    /// temperature in K at the known point.
    double still_conductance(double known_heat, double known_temperature) const noexcept;

    static std::span<const fields::Row> rows();

private:
    /// Conductance from the gas to the head over that from the head to what cools it.
    double conductance_ratio(const HeadState& here, const HeadState& known) const noexcept;
    double gas_temperature_at(const HeadState& here) const noexcept;
    double known_rise(const HeadState& known) const noexcept;  // K, of the head over its sink
};

/// (T_h - T_a)/(T_g - T_h) over that at a known point, for the flows of charge and of cooling air
/// over those there. Form of NACA TR 612 and 683, not read there; exponents 0.57 and 0.58 give the
/// slopes 0.38 and -0.39 that Schey and Pinkel measured in flight.
double cooling_ratio_share(double charge_flow_share, double cooling_flow_share) noexcept;

/// Temperature of a head of which T_h - T_a is `ratio` times T_g - T_h; all in K.
constexpr double head_between(double gas_temperature, double air_temperature,
                              double ratio) noexcept {
    return (ratio * gas_temperature + air_temperature) / (1 + ratio);
}

/// K by which the gas that heats the head is hotter than at 25 degC charge and an equivalence ratio
/// of 1.17: 0.45 K per K of charge, and less on either side of 1.1.
constexpr double gas_temperature_shift(double charge_temperature,
                                       double equivalence_ratio) noexcept {
    const double off = equivalence_ratio - 1.1;
    return 0.45 * (charge_temperature - 298.15) - 700 * (off * off - 0.07 * 0.07);
}

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::CoolingBy> {
    static constexpr std::array<std::string_view, 3> names{"fan", "ram_air", "liquid"};
};
