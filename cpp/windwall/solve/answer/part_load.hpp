#pragma once
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/results/part_load_result.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <optional>
#include <span>

/// What the pedal holds, explained.
namespace windwall::solve {

/// A road speed in m/s, in a gear counted from 0 or in the highest that holds it.
PartLoadResult answer_hold_speed(const vehicle::Vehicle& vehicle, double road_speed,
                                 std::optional<std::size_t> gear = {});

/// The engine alone, standing, at a speed in rad/s or at the one it idles at.
PartLoadResult answer_idle(const vehicle::Vehicle& vehicle,
                           std::optional<double> engine_speed = {});

/// The same over several speeds, one column for each number that an operating point answers.
Curve hold_speed_curve(const vehicle::Vehicle& vehicle, std::span<const double> road_speeds,
                       std::optional<std::size_t> gear = {});
Curve idle_curve(const vehicle::Vehicle& vehicle, std::span<const double> engine_speeds);

}  // namespace windwall::solve
