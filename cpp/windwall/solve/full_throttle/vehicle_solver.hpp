#pragma once
#include "windwall/road/road_load.hpp"
#include "windwall/solve/point.hpp"
#include "windwall/solve/sweep.hpp"

#include <functional>
#include <vector>

namespace windwall::solve {

/// What a torque at the flywheel becomes at the road.
struct Reach {
    double wheel_torque{};  // N m
    double thrust{};        // N at the road, never more than the grip
    double slip{};          // share of the wheels' speed
    double road_speed{};
    bool grips = true;  // false: the engine could push harder than the tyres hold
};

/// Full throttle at one engine speed in one gear, taken to the road.
struct Pull : Reach {
    Point point{};
    std::size_t gear{};   // from 0
    double position = 1;  // of a variator
    road::RoadLoad load{};
    std::vector<double> watched{};  // what an observer read off the solved point

    double surplus() const noexcept { return thrust - load.total(); }
    driveline::Stance stance() const noexcept { return {gear, position}; }
};

/// Looks at every pull once it is solved, while its stations are still there.
using Observer = std::function<void(const vehicle::Balance&, Pull&)>;

/// Takes operating points to the road. The workspace of one thread.
class Puller {
public:
    explicit Puller(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if = {},
                    Observer observer = {});

    /// The road speed follows from the engine speed, the gearing and the slip that the thrust asks
    /// for, and moves the air that cools: the point is solved again until both agree to `agreement`
    /// of the speed.
    Pull at(const Setting& setting, double agreement = 1e-7);
    /// Solves the point once, with the air of a given road speed.
    Pull once(const Setting& setting, double road_speed);
    /// The point solved last in another gear, without solving it again.
    Pull also_in(const Pull& pull, driveline::Stance stance);

    std::size_t gears() const noexcept { return sweeps_.size(); }
    const Sweep& sweep(std::size_t gear) const noexcept { return sweeps_[gear]; }
    /// Mass that a thrust accelerates in a stretch of a gear's sweep, kg: wheels and driveline turn
    /// along, and crank and blower except while the gearing shifts at one engine speed.
    double accelerated_mass(std::size_t gear, std::size_t stretch = 0) const noexcept;
    /// The same while the clutch slips at the start.
    double launched_mass(std::size_t gear) const noexcept;
    bool observed() const noexcept { return static_cast<bool>(observer_); }

    road::RoadLoad load(double road_speed) const noexcept;
    /// From the flywheel through the driveline to the road, near a road speed.
    Reach reach(const Setting& setting, double torque, double road_speed) const noexcept;
    /// Road speed before a thrust is known: the tyres slip as much as the road load makes them, and
    /// no belt does.
    double road_speed(const Setting& setting) const noexcept;

    PointSolver& solver() noexcept { return solver_; }
    const vehicle::Vehicle& vehicle() const noexcept { return *vehicle_; }

private:
    Pull solve(const Setting& setting, double road_speed);
    void observe(Pull& pull);
    double radius(double road_speed) const noexcept;
    double slip(double thrust) const noexcept;

    const vehicle::Vehicle* vehicle_;
    PointSolver solver_;
    Observer observer_;
    double standing_radius_{};
    double grip_limit_{};
    std::vector<Sweep> sweeps_;
};

}  // namespace windwall::solve
