#pragma once
#include "windwall/driveline/losses.hpp"

namespace windwall::driveline {

/// What a rubber belt takes from the torque that passes through it, slip aside.
struct BeltLosses {
    double drag_torque{};  // N m, whatever the load
    double load_loss{};    // share of the torque
    double ratio_loss{};   // further share for each factor e of ratio away from 1 to 1
    double churning{};     // N m at 5000 rpm, in proportion to speed

    /// Of a stage at one reduction: the drag is taken off behind the share of the load, T - T_0 - k
    /// T.
    Losses at(double ratio) const noexcept;
    /// What of a torque at the driving sheave turns the driven one, N m, before anything churns; 0
    /// where it does not drive.
    double driven_torque(double torque, double ratio) const noexcept;
    /// What has to arrive at the driving sheave for a torque to turn the driven one.
    double driving_torque(double driven, double ratio) const noexcept;
};

}  // namespace windwall::driveline
