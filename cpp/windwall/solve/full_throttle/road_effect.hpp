#pragma once
#include "windwall/numerics/spline.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <vector>

namespace windwall::solve {

/// How the torque changes with the road speed at one engine speed, as a share.
class RoadEffect {
public:
    /// Points at one engine speed; one, or none that differ, mean no effect.
    explicit RoadEffect(const std::vector<FullThrottlePoint>& points);
    RoadEffect() = default;

    double share(double road_speed) const noexcept;

private:
    bool any_ = false;
    double slowest_{};  // logarithms of road speeds
    double fastest_{};
    numerics::Spline share_;  // over the logarithm of the road speed
};

/// Whether two points at one engine speed show that the road speed does nothing to the torque.
bool same_torque(const FullThrottlePoint& a, const FullThrottlePoint& b) noexcept;

}  // namespace windwall::solve
