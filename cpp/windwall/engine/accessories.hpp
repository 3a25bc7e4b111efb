#pragma once
#include "windwall/fields/row.hpp"

#include <numbers>
#include <span>
#include <string_view>

namespace windwall::engine {

/// What the crank drives beside the wheels and the blower: dynamo, pump, fan.
struct Accessories {
    static constexpr std::string_view description = "Dynamo, pump and fan on the crank.";

    double torque = 0;                          // N m at any speed
    double fan_torque = 0;                      // N m at fan_speed
    double fan_speed = 120 * std::numbers::pi;  // rad/s

    /// N m at the crank, for an engine speed in rad/s.
    double drag(double engine_speed) const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::engine
