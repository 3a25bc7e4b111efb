#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/shaft.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

struct Clutch {
    static constexpr std::string_view kind = "clutch";
    static constexpr std::string_view description = "Clutch between the crank and the gearbox.";

    std::optional<double> capacity;                      // N m
    double inertia = 0.005;                              // kg m2
    double launch_speed = 2500 * std::numbers::pi / 30;  // rad/s

    std::size_t gears() const noexcept { return 1; }
    double ratio(GearState) const noexcept { return 1; }
    /// More torque than the capacity does not get through; what is left over heats the clutch.
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    std::optional<double> holds(double, GearState) const noexcept { return capacity; }
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline
