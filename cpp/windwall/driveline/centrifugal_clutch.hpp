#pragma once
#include "windwall/driveline/gear_state.hpp"
#include "windwall/driveline/shaft.hpp"
#include "windwall/fields/row.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::driveline {

/// Shoes that the speed of the input presses against a drum, and springs that hold them back.
struct CentrifugalClutch {
    static constexpr std::string_view kind = "centrifugal_clutch";
    static constexpr std::string_view description =
        "Clutch whose shoes grip by themselves once the engine turns fast enough.";

    double engagement_speed{};  // rad/s
    double shoe_mass{};         // kg each
    double drum_radius{};       // m
    double shoe_radius{};       // m, to the centre of mass of a shoe
    double shoes = 3;
    double friction = 0.3;
    double self_energising = 1;
    double inertia = 0.003;  // kg m2

    std::size_t gears() const noexcept { return 1; }
    double ratio(GearState) const noexcept { return 1; }
    /// More torque than the capacity at this speed does not get through; what is left over heats
    /// the clutch. Below the engagement speed nothing does.
    Shaft drive(const Shaft& in, GearState gear_state) const noexcept;
    std::optional<double> holds(double speed, GearState) const noexcept { return capacity(speed); }
    /// n mu r_d m r_g (w2 - w_e2), N m, at a speed in rad/s.
    double capacity(double speed) const noexcept;
    /// Speed, rad/s, at which it just holds a torque, N m: where the engine stays while it slips.
    double holding_speed(double torque) const noexcept;
    static std::span<const fields::Row> rows();

private:
    double grip() const noexcept;  // N m for a (rad/s)2 of difference
};

}  // namespace windwall::driveline
