#pragma once
#include "windwall/road/road_load.hpp"
#include "windwall/solve/full_throttle/gear_range.hpp"
#include "windwall/solve/point/point.hpp"

#include <functional>
#include <vector>

namespace windwall::solve {

/// What a torque at the flywheel becomes at the road.
struct TractiveState {
    double wheel_torque{};  // N m
    double thrust{};        // N at the road, never more than the grip
    double slip{};          // share of the wheels' speed
    double road_speed{};
    bool grips = true;  // false: the engine could push harder than the tyres hold
};

/// Full throttle at one engine speed in one gear, taken to the road.
struct FullThrottlePoint : TractiveState {
    Point point{};
    std::size_t gear{};   // from 0
    double position = 1;  // of a variator
    road::RoadLoad load{};
    std::vector<double> watched{};  // what a watch read off it

    double excess_force() const noexcept { return thrust - load.total(); }
    driveline::GearState gear_state() const noexcept { return {gear, position}; }
};

/// Reads what somebody wants to know of full-throttle points.
class Watch {
public:
    virtual ~Watch() = default;
    /// Off a point just solved, while its stations are still there.
    virtual void read(const vehicle::Balance& balance, FullThrottlePoint& full_throttle) = 0;
    /// Off one that was solved before and is now in another gear or under another body.
    virtual void read_road(const vehicle::Vehicle& vehicle, FullThrottlePoint& full_throttle) = 0;
};

/// Takes operating points to the road. The workspace of one thread.
class VehicleSolver {
public:
    explicit VehicleSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if = {},
                           Watch* watch = nullptr);

    /// Goes on with another vehicle, which must outlive the solver as the first one must: one that
    /// breathes, burns and ends as the first (`same_engine`), in another body, on other gears.
    void carry(const vehicle::Vehicle& other);

    /// The road speed follows from the engine speed, the gearing and the slip that the thrust asks
    /// for, and moves the air that cools: the point is solved again until both agree to `agreement`
    /// of the speed.
    FullThrottlePoint at(const DrivelineState& driveline_state, double agreement = 1e-7);
    /// Solves the point once, with the air of a given road speed.
    FullThrottlePoint once(const DrivelineState& driveline_state, double road_speed);
    /// A solved point in a gear of this vehicle, without solving it again.
    FullThrottlePoint taken_to(driveline::GearState gear_state,
                               const FullThrottlePoint& full_throttle);

    std::size_t gears() const noexcept { return gear_ranges_.size(); }
    const GearRange& gear_range(std::size_t gear) const noexcept { return gear_ranges_[gear]; }
    /// Highest engine speed that the gears go to, rad/s: the limit, unless lowered.
    double ceiling() const noexcept { return ceiling_; }
    /// Ends every gear at an engine speed, where nothing above it has an answer.
    void lower_ceiling(double engine_speed);
    /// Full throttle over engine speed, rad/s, and road speed, m/s, in N m, once it is known: where
    /// a belt drive with weights shifts depends on it.
    void shift_at(std::function<double(double, double)> torque);
    /// Mass that a thrust accelerates along a gear's range, kg: wheels and driveline turn along,
    /// and crank and blower as far as they get faster with the road.
    double accelerated_mass_at(std::size_t gear, double along) const noexcept;
    /// The same in the middle of a segment; all through it where its gearing or engine speed is
    /// one.
    double accelerated_mass(std::size_t gear, std::size_t segment = 0) const noexcept {
        return accelerated_mass_at(gear, static_cast<double>(segment) + 0.5);
    }
    /// The same while the clutch slips at the start.
    double launched_mass(std::size_t gear) const noexcept;

    road::RoadLoad load(double road_speed) const noexcept;
    /// From the flywheel through the driveline to the road, near a road speed.
    TractiveState tractive_state(const DrivelineState& driveline_state, double torque,
                                 double road_speed) const noexcept;
    /// Road speed before a thrust is known: the tyres slip as much as the road load makes them, and
    /// no belt does.
    double road_speed(const DrivelineState& driveline_state) const noexcept;

    /// False where no speed agrees with the radius that it makes the tyres grow to.
    bool tyres_keep_shape(const FullThrottlePoint& full_throttle) const noexcept;

    PointSolver& point_solver() noexcept { return point_solver_; }
    const vehicle::Vehicle& vehicle() const noexcept { return *vehicle_; }

private:
    FullThrottlePoint solve(const DrivelineState& driveline_state, double road_speed);
    void read(FullThrottlePoint& full_throttle);
    void find_gear_ranges();
    double radius(double road_speed) const noexcept;
    /// From the speed on tyres as they stand to that on tyres as they have grown, m/s.
    double on_grown_tyres(double standing) const noexcept;
    double slip(double thrust) const noexcept;

    const vehicle::Vehicle* vehicle_;
    PointSolver point_solver_;
    Watch* watch_;
    double standing_radius_{};
    double grip_limit_{};
    double ceiling_{};
    std::function<double(double, double)> full_torque_;  // empty before it is known
    std::vector<GearRange> gear_ranges_;
};

/// Whether two vehicles differ at most in body, goal, driveline and tyres, and none of these
/// changes where full throttle begins and ends. What breathes and burns is not compared.
bool same_range(const vehicle::Vehicle& a, const vehicle::Vehicle& b) noexcept;

}  // namespace windwall::solve
