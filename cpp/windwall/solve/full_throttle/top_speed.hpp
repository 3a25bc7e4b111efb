#pragma once
#include "windwall/solve/full_throttle/find_equilibrium_speed.hpp"
#include "windwall/solve/full_throttle/run_up.hpp"

#include <optional>
#include <vector>

namespace windwall::solve {

/// How fast a vehicle gets, and what it took to know.
struct TopSpeed {
    Outcome outcome{};
    EquilibriumSpeed equilibrium{};  // the balance speed
    std::optional<RunUp> run_up{};   // only where the goal names a road
    std::vector<TractiveEffortCurve>
        curves{};  // full throttle in every gear; empty without an answer
    std::vector<FullThrottlePoint> full_throttle_points{};  // the solved points in every gear
    /// Without an answer: at the launch speed, or where every gear ends below the rev limit.
    std::optional<FullThrottlePoint> unanswered{};
    long points = 0;       // operating points solved
    long evaluations = 0;  // residual evaluations of all of them

    /// The speed that goals and rankings go by: at the end of the road where one is named.
    double speed() const noexcept { return run_up ? run_up->speed : equilibrium.road_speed; }
};

/// Full throttle over engine speed, the climb through the gears, and the run over the goal's road.
TopSpeed top_speed(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if = {},
                   Watch* watch = nullptr);

/// TopSpeed::speed() alone; NaN without an answer.
double speed_of(const vehicle::Vehicle& vehicle);

/// Top speeds of vehicles that share engine, charge path, fuel and day: full throttle is solved
/// once for all of them, and each gets the speed that it gets alone, whatever came before it.
class SharedEngine {
public:
    /// Borrows the first vehicle.
    explicit SharedEngine(const vehicle::Vehicle& first, const vehicle::WhatIf& what_if = {},
                          Watch* watch = nullptr);

    TopSpeed top_speed(const vehicle::Vehicle& vehicle);
    /// The same without the solved points on the way, which take time to tell.
    TopSpeed brief_top_speed(const vehicle::Vehicle& vehicle);
    /// TopSpeed::speed() as the curves alone say, to a few parts in a thousand; nothing is solved.
    /// Where no road could bring it above `least`, something it does not exceed.
    double rough_speed(const vehicle::Vehicle& vehicle, double least = 0);

private:
    void climb_and_run(TopSpeed& found);

    VehicleSolver solver_;
    FullLoadCurve engine_;
    PointSolver::State start_;
};

}  // namespace windwall::solve
