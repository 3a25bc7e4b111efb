#pragma once

namespace windwall::driveline {

/// What a drive of continuously variable ratio does with the engine: up to the held speed it stands
/// at its lowest gearing and the engine rises with the road; then it shifts, and the engine stays;
/// fully shifted the engine rises again.
struct Variator {
    double low_ratio{};   // its largest reduction, at position 0
    double high_ratio{};  // its smallest reduction, at position 1
    double held_speed{};  // of the crank while it shifts, rad/s

    /// Reduction at a position from 0 to 1: equal steps of position are equal steps of ratio.
    double ratio(double position) const noexcept;
    /// The position that has this reduction; 0 or 1 beyond the ends.
    double position(double ratio) const noexcept;
};

}  // namespace windwall::driveline
