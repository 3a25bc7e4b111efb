#pragma once
#include "windwall/solve/full_throttle/full_load_plan.hpp"
#include "windwall/solve/full_throttle/road_effect.hpp"
#include "windwall/solve/full_throttle/torque_over_speed.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

/// Full throttle of one vehicle over engine speed, the same for all gears: a few solved points and
/// splines through the torque, with more points where one regime ends and another begins, and where
/// the torque is steep. Where the road speed moves a point, each is solved at the road speed that
/// goes with it in the gear the vehicle is expected to run out in, and what another road speed does
/// is taken to be the same share at every engine speed.
///
/// It reaches from the launch speed up to the first engine speed without an answer; the solver's
/// ceiling is lowered to that.
class FullLoadCurve {
public:
    explicit FullLoadCurve(VehicleSolver& solver);

    bool answered() const noexcept { return answered_; }
    /// The point that has no answer: at the launch speed or, of an answered curve, above its end.
    const std::optional<FullThrottlePoint>& unanswered() const noexcept { return unanswered_; }
    /// N m at the flywheel, between the launch speed and the ceiling.
    double torque(double engine_speed, double road_speed) const noexcept;
    /// Whether somewhere the throttle is held back, beyond which the torque may be anything.
    bool held_back() const noexcept { return held_back_; }
    /// Every solved point taken to the road; those of an observed vehicle in every gear.
    const std::vector<FullThrottlePoint>& points() const noexcept { return points_; }

private:
    using Nodes = std::vector<FullThrottlePoint>;

    bool solve(VehicleSolver& solver, const DrivelineState& driveline_state, Nodes& into);
    FullThrottlePoint attempt(VehicleSolver& solver, const DrivelineState& driveline_state,
                              Nodes& into);
    bool solve_plan(VehicleSolver& solver);
    bool solve_road_effect(VehicleSolver& solver, const FullLoadPlan& plan, const Nodes& nodes);
    bool lower_ceiling(VehicleSolver& solver);
    void refine(VehicleSolver& solver, std::size_t gear, Nodes& nodes);
    void fit(const Nodes& nodes);

    bool answered_ = false;
    bool held_back_ = false;
    std::optional<FullThrottlePoint> unanswered_;
    std::vector<FullThrottlePoint> points_;
    RoadEffect effect_;
    TorqueOverSpeed torque_;  // the road's effect taken out
};

}  // namespace windwall::solve
