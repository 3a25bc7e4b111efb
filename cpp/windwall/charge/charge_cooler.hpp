#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <span>
#include <string_view>

namespace windwall::charge {

/// How a cooler exchanges heat at one operating point.
struct HeatExchange {
    double cooling_flow{};         // kg/s
    double cooling_temperature{};  // K, of the air that meets the core
    double conductance{};          // W/K
    double effectiveness{};        // of the smaller heat capacity flow
    double charge_share{};         // of the way from the charge's to the cooling air's temperature
    double outlet_temperature{};   // K, of the charge
    double heat{};                 // W, from the charge; negative where it is warmed
    double condensed{};            // kg per kg dry air that became liquid in the core
};

struct ChargeCooler {
    static constexpr std::string_view kind = "charge_cooler";
    static constexpr std::string_view description =
        "Air-to-air charge cooler in cross-flow, cooled by the air of the road.";

    static constexpr bool condenses = true;

    double conductance{};          // W/K
    double at_charge_flow{};       // kg/s
    double at_cooling_flow{};      // kg/s
    double face_area{};            // m2
    double installed_share = 0.3;  // of the air speed over the vehicle
    double under_hood_rise = 5;    // K
    double hot_side_share = 0.5;
    double charge_exponent = 0.7;
    double cooling_exponent = 0.6;
    double drop = 3e3;        // Pa at at_charge_flow and at_density
    double at_density = 1.4;  // kg/m3
    double drop_exponent = 1.8;
    double core_mass = 2;  // kg of aluminium

    HeatExchange exchange(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    /// The core, between the charge and the cooling air.
    std::array<media::LumpedNode, 1> thermal_nodes(const media::Stream& in, double outlet_pressure,
                                                   const Surroundings& surroundings) const noexcept;
    static std::span<const fields::Row> rows();

private:
    /// Where the core comes to rest, K, and what leads charge and cooling air to it, W/K.
    struct Core {
        double rest{};
        double charge_side{};
        double air_side{};
        double air{};  // K, of the cooling air on its way
    };
    media::Stream exchanged(const media::Stream& in, const Surroundings& surroundings,
                            HeatExchange& found) const noexcept;
    media::Stream rested(const media::Stream& in, const Surroundings& surroundings,
                         HeatExchange& found) const noexcept;
    Core core(const media::Stream& in, const HeatExchange& found) const noexcept;
};

}  // namespace windwall::charge
