#pragma once
#include "windwall/driveline/force_balance.hpp"

#include <optional>

namespace windwall::driveline {

/// Engine speed while a belt drive shifts, as measured at both ends of it: rad/s.
struct ShiftLine {
    double begin{};
    double end{};
};

/// Reduction at a position from 0 to 1: equal steps of position are equal steps of ratio.
double ratio_between(double low_ratio, double high_ratio, double position) noexcept;

/// What a drive of continuously variable ratio does with the engine: up to the speed at which it
/// begins to shift it stands at its lowest gearing and the engine rises with the road; then it
/// shifts, and holds the engine at a speed that belongs to its position, and to the torque where
/// forces decide it; fully shifted the engine rises again. All speeds and torques are the crank's.
struct Variator {
    double low_ratio{};                  // its largest reduction, at position 0
    double high_ratio{};                 // its smallest reduction, at position 1
    ShiftLine line{};                    // at the driving sheave; where no forces are known
    std::optional<ForceBalance> forces;  // of weights, springs and cam
    double before = 1;                   // turns of the crank for one of the driving sheave

    double ratio(double position) const noexcept;
    /// The position that has this reduction; 0 or 1 beyond the ends.
    double position_of(double ratio) const noexcept;

    /// Speed, rad/s, at which it holds a crank that gives a torque, N m, at a position.
    double held_speed(double position, double torque) const noexcept;
    /// The position it takes at an engine speed and a torque: 0 up to where it begins to shift, 1
    /// from where it has shifted. With one held speed it goes from 0 to 1 there.
    double position(double engine_speed, double torque) const noexcept;
    /// The position it takes where its output turns at a speed, rad/s, with the engine held where
    /// it belongs: what a road speed asks for. 0 and 1 beyond what it can shift through.
    double position_at_output(double output_speed, double torque) const noexcept;
    /// The same, gone on beyond both ends as if the engine stayed where it is held there.
    double wanted_position(double output_speed, double torque) const noexcept;
    /// How far the engine's speed rises while the output's does, both as logarithms: 0 where it is
    /// held, 1 where the ratio is fixed, below 0 where it falls while the belt shifts. What turns
    /// with the crank is felt at the output as this share of what it is at a fixed ratio.
    double crank_share(double position, double torque) const noexcept;

private:
    /// Where equal steps of ratio lead to a reduction, beyond the ends too.
    double unbounded_position(double ratio) const noexcept;
    bool holds_one_speed() const noexcept { return !forces && line.begin == line.end; }
};

}  // namespace windwall::driveline
