#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/losses.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <span>
#include <string_view>

namespace windwall::driveline {

struct FinalDrive {
    static constexpr std::string_view kind = "final_drive";
    static constexpr std::string_view description =
        "One fixed pair of gears: a primary drive, a bevel box or an axle.";

    double fixed_ratio{};
    double efficiency = 0.96;
    double drag_torque = 0.3;      // N m
    double churning_torque = 0.0;  // N m at 5000 rpm
    double inertia = 0.002;        // kg m2

    std::size_t gears() const noexcept { return 1; }
    double ratio(GearState) const noexcept { return fixed_ratio; }
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline
