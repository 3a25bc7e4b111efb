#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/losses.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace windwall::driveline {

struct Gearbox {
    static constexpr std::string_view kind = "gearbox";
    static constexpr std::string_view description = "Gearbox with fixed ratios, one at a time.";

    std::vector<double> ratios;  // from first gear to top
    double efficiency = 0.97;
    std::optional<double> direct_efficiency;  // in gears whose ratio is 1
    double drag_torque = 0.3;                 // N m
    double churning_torque = 0.3;             // N m at 5000 rpm
    double inertia = 0.003;                   // kg m2
    double shift_time = 0.4;                  // s

    std::size_t gears() const noexcept;
    /// Gears count from 0; beyond top it stays in top.
    double ratio(GearState gear_state) const noexcept;
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    std::optional<fields::Violation> check() const;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline
