#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/charge/wall_heat.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

#include <array>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

struct Duct {
    static constexpr std::string_view kind = "duct";
    static constexpr std::string_view description = "Round pipe or hose with its bends.";

    double length{};  // m
    double bore{};    // m
    double loss_coefficient = 0.3;
    double roughness = 0.02e-3;                // m
    double bend_angle = std::numbers::pi / 2;  // rad, all bends together
    std::optional<double> conductance;         // W/K
    double wall_thickness = 2e-3;              // m, as of aluminium

    double surface() const noexcept;  // m2
    /// Between the charge and the air under the bodywork, W/K, unless stated; outside_film in
    /// W/(m2 K).
    double wall_conductance(const media::Stream& in, double outside_film) const noexcept;
    Wall wall(const media::Stream& in, double outside_film) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    /// The wall.
    std::array<media::LumpedNode, 1> thermal_nodes(const media::Stream& in, double outlet_pressure,
                                                   const Surroundings& surroundings) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
