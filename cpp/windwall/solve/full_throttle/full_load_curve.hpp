#pragma once
#include "windwall/solve/full_throttle/full_load_plan.hpp"
#include "windwall/solve/full_throttle/road_effect.hpp"
#include "windwall/solve/full_throttle/starts.hpp"
#include "windwall/solve/full_throttle/torque_over_speed.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

/// Full throttle of one engine with its charge path over engine speed, the same for all gears and
/// bodies: a few solved points and splines through the torque, with more points where one regime
/// ends and another begins, and where the torque is steep. Where the road speed moves a point, each
/// is solved at the one that usually goes with it, and what another road speed does is taken to be
/// the same share at every engine speed.
///
/// It reaches from the launch speed up to the first engine speed without an answer; the solver's
/// ceiling is lowered to that, and a belt drive with weights shifts where this torque lets it.
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
    /// The solved points on the road of the solver's vehicle: each in every gear, at both ends and
    /// in the middle of a shift at one engine speed; one in another wind in the gear that comes
    /// nearest to it.
    std::vector<FullThrottlePoint> on_the_road(VehicleSolver& solver) const;
    /// Lets the solver go on from what its points let expect at an engine speed.
    void go_on_near(double engine_speed, VehicleSolver& solver) const;

private:
    using Nodes = std::vector<FullThrottlePoint>;

    bool solve(VehicleSolver& solver, double engine_speed, double road_speed, Nodes& into);
    bool solve_plan(VehicleSolver& solver);
    bool solve_road_effect(VehicleSolver& solver, const FullLoadPlan& plan);
    bool lower_ceiling(VehicleSolver& solver);
    void refine(VehicleSolver& solver, const FullLoadPlan& plan);
    void fit();
    void let_shift(VehicleSolver& solver) const;

    bool answered_ = false;
    bool held_back_ = false;
    std::optional<FullThrottlePoint> unanswered_;
    Nodes nodes_;           // by rising engine speed, once solved
    Nodes in_other_winds_;  // at the engine speed of a node
    Starts starts_;         // of every point that was answered on the way
    RoadEffect effect_;
    TorqueOverSpeed torque_;  // the road's effect taken out
};

}  // namespace windwall::solve
