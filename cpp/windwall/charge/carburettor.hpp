#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <span>
#include <string_view>

namespace windwall::charge {

struct Carburettor {
    static constexpr bool adds_liquid = true;
    static constexpr bool brings_fuel = true;
    static constexpr std::string_view kind = "carburettor";
    static constexpr std::string_view description =
        "Venturi that draws the engine's fuel from a float bowl into the charge.";

    double venturi{};                     // m, narrowest bore
    double discharge_coefficient = 0.85;  // of the air in the venturi
    double unrecovered = 0.25;            // of the depression
    bool bowl_referenced = true;
    double evaporated = 0.3;        // of the fuel, at once
    double on_wall = 0.35;          // of what has not
    double drop_diameter = 100e-6;  // m
    double idle_richer = 0.05;      // of the fuel at load, more through the idle jet

    /// Pressure of the charge less that in the throat, Pa, odd in the flow.
    double depression(const media::Stream& in) const noexcept;
    /// Fuel drawn over the fuel asked for: 1 with the bowl at the inlet's pressure; with the bowl
    /// in the ambient air the root of the head left over the depression, 0 where boost undoes it.
    double metering(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Fuel drawn by a head of `bowl_above_inlet` + `depression` Pa over that drawn by the depression
/// alone, which the jets are cut for; between 0 and 2.
double jet_metering(double depression, double bowl_above_inlet) noexcept;

}  // namespace windwall::charge
