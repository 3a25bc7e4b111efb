#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/charge/wall_heat.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

struct Plenum {
    static constexpr std::string_view kind = "plenum";
    static constexpr std::string_view description =
        "Volume that evens out the pulses; without loss in steady flow.";

    double volume{};                    // m3
    std::optional<double> conductance;  // W/K
    double wall_thickness = 3e-3;       // m, as of aluminium

    double surface() const noexcept;  // m2, of a cube of this volume
    /// Of a cube of this volume, W/K, unless stated; outside_film in W/(m2 K).
    double wall_conductance(double outside_film) const noexcept;
    Wall wall(double outside_film) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    /// The wall.
    std::array<media::LumpedNode, 1> thermal_nodes(const media::Stream& in, double outlet_pressure,
                                                   const Surroundings& surroundings) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
