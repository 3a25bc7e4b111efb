#pragma once
#include "windwall/driveline/belt_losses.hpp"
#include "windwall/driveline/flyweights.hpp"
#include "windwall/driveline/sheaves.hpp"
#include "windwall/driveline/torque_cam.hpp"

namespace windwall::driveline {

/// Where a belt runs, and how far both sheaves have moved for it from the lowest gearing.
struct BeltPlace {
    PitchRadii radii;
    Wraps wraps;
    Travel closed;    // the driving sheave
    double opened{};  // the driven one, m
};

/// Weights on one side of a belt and spring and helix on the other. The belt stays where it is
/// while the forces that close both sheaves are as the angles that it wraps: virtual work without
/// friction at a constant length of the belt, the same as one mean tension all along it.
class ForceBalance {
public:
    ForceBalance(const Sheaves& sheaves, const Flyweights& flyweights, const TorqueCam& torque_cam,
                 const BeltLosses& losses, double low_ratio, double high_ratio) noexcept;

    /// Speed of the driving sheave, rad/s, at which the belt stays at a ratio while a torque, N m,
    /// arrives there.
    double shift_speed(double ratio, double torque) const noexcept;
    /// Speed at which the driving sheave begins to grip the belt.
    double engagement_speed() const noexcept;
    /// Speed at which it holds a torque in the lowest gearing: where the engine stays while the
    /// belt slips at the start. It holds no more than what it is when it begins to shift.
    double holding_speed(double torque) const noexcept;
    /// Torque at the driving sheave, N m, from which on the belt slips through; infinite where the
    /// helix presses the harder the more it is asked for, and the weights are fast enough.
    double capacity(double speed, double ratio) const noexcept;
    /// Force along the driving sheave that squeezes the belt, N: that of the weights, or in the
    /// highest gearing, where they press against a stop, what the driven sheave answers with.
    double clamp_force(double speed, double torque, double ratio) const noexcept;

    /// What the driven sheave answers with, as felt along the driving one, N, while a torque
    /// arrives there: what closes it, times the wraps.
    double answered(double ratio, double torque) const noexcept;
    BeltPlace place(double ratio) const noexcept;

private:
    double answered(const BeltPlace& belt, double torque, double ratio) const noexcept;
    /// What a force along the driving sheave holds; the side that the belt wraps less slips first.
    double held(const BeltPlace& belt, double force) const noexcept;
    /// The capacity as far as the driven sheave decides it.
    double held_by_driven(const BeltPlace& belt, double ratio) const noexcept;

    Sheaves sheaves_;
    Flyweights flyweights_;
    TorqueCam torque_cam_;
    BeltLosses losses_;
    double low_ratio_;
    PitchRadii lowest_;
    double full_travel_;
};

}  // namespace windwall::driveline
