#include "windwall/driveline/force_balance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::driveline {

ForceBalance::ForceBalance(const Sheaves& sheaves, const Flyweights& flyweights,
                           const TorqueCam& torque_cam, const BeltLosses& losses, double low_ratio,
                           double high_ratio) noexcept
    : sheaves_(sheaves),
      flyweights_(flyweights),
      torque_cam_(torque_cam),
      losses_(losses),
      low_ratio_(low_ratio),
      lowest_(sheaves.radii(low_ratio)),
      full_travel_(sheaves.movement(sheaves.radii(high_ratio).driving - lowest_.driving)) {}

BeltPlace ForceBalance::place(double ratio) const noexcept {
    const PitchRadii belt = sheaves_.radii(ratio);
    return {belt,
            belt_wraps(belt.driving, belt.driven, sheaves_.centre_distance),
            {sheaves_.movement(belt.driving - lowest_.driving), full_travel_},
            sheaves_.movement(lowest_.driven - belt.driven)};
}

double ForceBalance::answered(const BeltPlace& belt, double torque, double ratio) const noexcept {
    const double passed = std::min(torque, held_by_driven(belt, ratio));
    const double force =
        torque_cam_.closing_force(losses_.driven_torque(passed, ratio), belt.opened);
    return force * belt.wraps.driving / belt.wraps.driven;
}

double ForceBalance::answered(double ratio, double torque) const noexcept {
    return answered(place(ratio), torque, ratio);
}

double ForceBalance::shift_speed(double ratio, double torque) const noexcept {
    const BeltPlace belt = place(ratio);
    return flyweights_.speed_for(answered(belt, torque, ratio), belt.closed);
}

double ForceBalance::engagement_speed() const noexcept {
    return flyweights_.speed_for(0, {0, full_travel_});
}

double ForceBalance::held(const BeltPlace& belt, double force) const noexcept {
    const double weaker = std::min(1.0, belt.wraps.driven / belt.wraps.driving);
    return clamp_torque(sheaves_.friction, weaker * std::max(0.0, force), belt.radii.driving,
                        sheaves_.groove_angle / 2);
}

/// The helix adds to what holds the torque that turns it: T = a + b T. From b = 1 on any is held.
double ForceBalance::held_by_driven(const BeltPlace& belt, double ratio) const noexcept {
    const double share = belt.wraps.driving / belt.wraps.driven;
    const double springs = held(belt, share * torque_cam_.closing_force(0, belt.opened));
    const double first = losses_.driving_torque(0, ratio);  // the least that turns it
    if (springs <= first) return springs;
    const double turned = losses_.driven_torque(first + 1, ratio);
    const double gained = held(belt, share * torque_cam_.force_per_torque() * turned);
    if (gained >= 1) return std::numeric_limits<double>::infinity();
    return first + (springs - first) / (1 - gained);
}

double ForceBalance::capacity(double speed, double ratio) const noexcept {
    const BeltPlace belt = place(ratio);
    const double by_weights = held(belt, flyweights_.closing_force(speed, belt.closed));
    return std::min(by_weights, held_by_driven(belt, ratio));
}

double ForceBalance::clamp_force(double speed, double torque, double ratio) const noexcept {
    const BeltPlace belt = place(ratio);
    return std::clamp(flyweights_.closing_force(speed, belt.closed), 0.0,
                      answered(belt, torque, ratio));
}

double ForceBalance::holding_speed(double torque) const noexcept {
    const BeltPlace belt = place(low_ratio_);
    const double force = torque > 0 ? torque / held(belt, 1) : 0;
    return std::min(flyweights_.speed_for(force, belt.closed), shift_speed(low_ratio_, torque));
}

}  // namespace windwall::driveline
