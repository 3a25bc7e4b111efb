#pragma once
#include "windwall/road/road_load.hpp"
#include "windwall/solve/point.hpp"

#include <functional>
#include <vector>

namespace windwall::solve {

/// Full throttle at one engine speed in one gear, taken to the road.
struct Pull {
    Point point;
    std::size_t gear{};  // from 0
    double road_speed{};
    double wheel_torque{};  // N m
    double thrust{};        // N at the road, never more than the grip
    double slip{};          // share of the wheels' speed
    road::RoadLoad load;
    bool grips = true;              // false: the engine could push harder than the tyres hold
    std::vector<double> watched{};  // what an observer read off the solved point

    double surplus() const noexcept { return thrust - load.total(); }
};

/// Looks at every pull once it is solved, while its stations are still there.
using Observer = std::function<void(const vehicle::Balance&, Pull&)>;

/// Takes operating points to the road. The workspace of one thread.
class Puller {
public:
    explicit Puller(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if = {},
                    Observer observer = {});

    /// The road speed follows from the engine speed, the gear and the slip that the thrust asks
    /// for; where it moves the cooling air, the point is solved again until both agree to
    /// `agreement` of the speed. Where it does not, a point is solved once for all gears.
    Pull at(double engine_speed, std::size_t gear, double agreement = 1e-7);

    std::size_t gears() const noexcept { return ratios_.size(); }
    double lowest_engine_speed() const noexcept { return lowest_; }
    double highest_engine_speed() const noexcept { return highest_; }
    /// Mass that a thrust accelerates in a gear, kg: wheels, driveline, crank and blower turn
    /// along.
    double accelerated_mass(std::size_t gear) const noexcept { return masses_[gear]; }
    road::RoadLoad load(double road_speed) const noexcept;
    /// Engine speed that goes with a road speed in a gear, without slip.
    double engine_speed(double road_speed, std::size_t gear) const noexcept;

    PointSolver& solver() noexcept { return solver_; }
    const vehicle::Vehicle& vehicle() const noexcept { return *vehicle_; }

private:
    const Point& solve(double engine_speed, double road_speed);
    void reach_road(Pull& pull) const noexcept;
    double radius(double road_speed) const noexcept;

    const vehicle::Vehicle* vehicle_;
    PointSolver solver_;
    Observer observer_;
    Point last_;
    bool road_cools_ = false;
    double standing_radius_{};
    double grip_limit_{};
    double lowest_{};
    double highest_{};
    std::vector<double> ratios_;
    std::vector<double> masses_;
};

}  // namespace windwall::solve
