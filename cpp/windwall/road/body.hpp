#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::road {

/// Speed at which rises with speed are stated, m/s: 100 km/h.
inline constexpr double rise_speed = 100 / 3.6;

struct Body {
    static constexpr std::string_view description =
        "What is to be moved through the air and over the road.";

    double mass{};       // kg, ready to run, driver included
    double drag_area{};  // m2
    double rolling_resistance = 0.015;
    double rolling_rise = 0;              // share gained at 100 km/h
    std::optional<double> wheel_inertia;  // kg m2, all wheels together
    double rotating_share = 0.03;         // of the mass, where the wheels' inertia is not stated

    /// Rolling resistance over weight at a speed in m/s.
    double rolling_coefficient(double speed) const noexcept;
    /// Mass that the wheels add to the accelerated mass, kg, at a rolling radius in m.
    double rotating_mass(double rolling_radius) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::road
