#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/account.hpp"
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <vector>

namespace windwall::solve {

/// What the builder should know about one solved point: rules used outside their range, bands, and
/// numbers that only make sense with care. `balance` must be where the point left it, and `now` is
/// the point described.
std::vector<Caution> point_cautions(const vehicle::Balance& balance, const Point& point,
                                    const OperatingPoint& now);

/// About the other balance that a bypass has at the pedal of the last point, if it has one.
std::vector<Caution> second_balance(PointSolver& solver);

/// About the part of the driveline that slips on the way up, where it is asked for most.
std::vector<Caution> slip_cautions(const TopSpeed& found, const vehicle::Vehicle& vehicle);

/// About the temperature of the exhaust.
std::vector<Caution> heat_cautions(const HeatAccount& heat);

}  // namespace windwall::solve
