#pragma once
#include "windwall/solve/results/limit.hpp"
#include "windwall/solve/results/top_speed_result.hpp"

#include <vector>

/// From a vehicle to everything that is told of it.
namespace windwall::solve {

/// Top speed of a vehicle with its limits, explained.
TopSpeedResult answer_speed(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated = {});

/// The top speed and its point alone, for those who ask again and again: nothing is looked at on
/// the way up, and nothing is solved a second time to say what it adds.
TopSpeedResult answer_speed_briefly(const vehicle::Vehicle& vehicle);

/// One operating point, explained.
PointResult answer_point(const vehicle::Vehicle& vehicle,
                         const vehicle::OperatingCondition& condition);

}  // namespace windwall::solve
