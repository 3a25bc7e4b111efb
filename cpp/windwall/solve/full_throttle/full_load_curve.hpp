#pragma once
#include "windwall/numerics/spline.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <vector>

namespace windwall::solve {

/// How the torque changes with the road speed at one engine speed, as a share.
class RoadEffect {
public:
    /// Pulls at one engine speed; one, or none that differ, mean no effect.
    explicit RoadEffect(const std::vector<FullThrottlePoint>& pulls);
    RoadEffect() = default;

    double share(double road_speed) const noexcept;

private:
    bool any_ = false;
    double slowest_{};  // logarithms of road speeds
    double fastest_{};
    numerics::Spline share_;  // over the logarithm of the road speed
};

/// Full throttle of one vehicle over engine speed, the same for all gears: a few solved points and
/// a spline through the torque. Where the road speed moves a point, each is solved at the road
/// speed that goes with it in the gear the vehicle is expected to run out in, and what another road
/// speed does is taken to be the same share at every engine speed.
class FullLoadCurve {
public:
    explicit FullLoadCurve(VehicleSolver& solver);

    bool answered() const noexcept { return unanswered_ == nowhere; }
    /// The first pull that has no answer; only where not all are answered.
    const FullThrottlePoint& unanswered() const noexcept { return pulls_[unanswered_]; }
    /// N m at the flywheel, between the launch speed and the limit.
    double torque(double engine_speed, double road_speed) const noexcept;
    /// Every solved point taken to the road; those of an observed vehicle in every gear.
    const std::vector<FullThrottlePoint>& pulls() const noexcept { return pulls_; }

private:
    static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

    bool solve(VehicleSolver& solver, const DrivelineState& setting,
               std::vector<FullThrottlePoint>& into);
    void fit(const std::vector<FullThrottlePoint>& nodes);

    std::vector<FullThrottlePoint> pulls_;
    std::size_t unanswered_ = nowhere;
    RoadEffect effect_;
    numerics::Spline torque_;  // over engine speed, the road's effect taken out
};

}  // namespace windwall::solve
