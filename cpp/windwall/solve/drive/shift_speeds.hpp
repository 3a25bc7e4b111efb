#pragma once
#include "windwall/vehicle/vehicle.hpp"

#include <vector>

namespace windwall::solve {

/// Road speed in m/s at which each gear gives way to the next, where that accelerates more at full
/// throttle, or at the rev limit; the last one never does. From the quick curves, warmed through.
struct ShiftSpeeds {
    std::vector<double> up;      // one for each gear
    std::size_t start_gear = 0;  // from 0, in which it launches best
};
ShiftSpeeds shift_speeds(const vehicle::Vehicle& vehicle);

}  // namespace windwall::solve
