#pragma once
#include "windwall/media/constants.hpp"

#include <numbers>

/// What stands in where an engine states nothing, shared by what is written about one.
namespace windwall::engine {

inline constexpr double degree = std::numbers::pi / 180;
inline constexpr double usual_best_share = 0.7;     // best speed, of the rev limit
inline constexpr double usual_air_density = 1.184;  // kg/m3, 25 degC and 101.3 kPa
inline constexpr double usual_idle_speed = 1200 * std::numbers::pi / 30;  // rad/s
inline constexpr double least_speed = 1;            // rad/s: keeps torque finite at standstill

}  // namespace windwall::engine
