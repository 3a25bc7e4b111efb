#pragma once
#include "windwall/solve/gear_curve.hpp"

#include <vector>

namespace windwall::solve {

/// The run from standstill over a given road, at every speed in the gear that accelerates most,
/// shifting in no time.
struct RunUp {
    double speed{};      // m/s at the end of the road
    double time{};       // s
    std::size_t gear{};  // in use there
};

/// By the quadrature s(v) = integral of m v dv / (F - R), towards the speed `summit` that full
/// throttle approaches or ends at.
RunUp run_up(const Puller& puller, const std::vector<GearCurve>& curves, double summit,
             double distance);

}  // namespace windwall::solve
