#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <optional>
#include <string>

namespace windwall::solve {

/// How far a point is from a knock margin of nothing in the middle of its band, each way found by
/// solving the coupled point again until nothing is left. Engine speed, road speed, throttle and
/// spark are held where they are, but for the one that is moved. Negative: that much too far
/// already. Empty: not reached within the range that is searched.
struct Margins {
    std::string blower;                        // id of the one whose drive is moved; may be empty
    std::optional<double> drive_ratio;         // of that blower, at which nothing is left
    std::optional<double> boost;               // Pa in the manifold, to there
    std::optional<double> charge_temperature;  // K at the manifold
    std::optional<double> spark;               // rad of advance
};

/// What is left at a pull of a vehicle.
Margins margins(const vehicle::Vehicle& vehicle, const FullThrottlePoint& pull);

}  // namespace windwall::solve
