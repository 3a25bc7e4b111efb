#pragma once

namespace windwall::driveline {

/// What one turning shaft carries: speed in rad/s, torque in N m, positive when it drives.
struct Shaft {
    double speed{};
    double torque{};

    /// W
    double power() const noexcept { return speed * torque; }
};

}  // namespace windwall::driveline
