#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/losses.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// Speed ripple of a chain on a sprocket, 1 - cos(pi/z): the pitch line is a polygon, so the chain
/// runs slower by this share when a flat leads than when a corner does.
double chain_speed_ripple(double teeth) noexcept;

struct Chain {
    static constexpr std::string_view kind = "chain";
    static constexpr std::string_view description = "Roller chain or toothed belt on two wheels.";

    double teeth_front{};
    double teeth_rear{};
    double efficiency = 0.97;
    double drag_torque = 0.1;  // N m
    double inertia = 0.001;    // kg m2

    std::size_t gears() const noexcept { return 1; }
    double ratio(GearState) const noexcept { return teeth_rear / teeth_front; }
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    /// Of the smaller wheel.
    double speed_ripple() const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::driveline
