#pragma once
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/operating_point.hpp"

namespace windwall::solve {

/// A second opinion on knock, by integrating the delay of the end gas, takes as long as the rest.
enum class SecondOpinion { asked, left_out };

/// Writes down what was just solved, the engine alone. `balance` must be where the point left it.
/// Into a point that was used before nothing is allocated.
void describe(const vehicle::Balance& balance, const Point& point, OperatingPoint& into,
              SecondOpinion second_opinion = SecondOpinion::asked);

/// The same with what reached the road.
void describe(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle,
              OperatingPoint& into, SecondOpinion second_opinion = SecondOpinion::asked);

/// What reached the road alone.
void describe_road(const vehicle::Vehicle& vehicle, const FullThrottlePoint& full_throttle,
                   OperatingPoint& into);

}  // namespace windwall::solve
