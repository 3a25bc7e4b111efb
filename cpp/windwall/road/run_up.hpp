#pragma once
#include "windwall/road/resistance.hpp"

namespace windwall::road {

// Running up to speed in still air. `mass` is the accelerated mass in kg; speeds in m/s, forces in
// N, power in W. A speed that is never reached takes an infinite time and distance.

/// Time, s, from one speed to a higher one under a constant thrust.
double run_up_time_constant_force(double mass, double thrust, const Resistance& resistance,
                                  double from, double to) noexcept;

/// Distance, m, of the same.
double run_up_distance_constant_force(double mass, double thrust, const Resistance& resistance,
                                      double from, double to) noexcept;

/// Speed, m/s, after a distance under a constant thrust, also when the thrust is too small to hold
/// the speed; 0 once at rest.
double run_up_speed_constant_force(double mass, double thrust, const Resistance& resistance,
                                   double from, double distance) noexcept;

/// Time, s, from rest to a speed under a constant power, for a resistance that is not negative.
double run_up_time_constant_power(double mass, double power, const Resistance& resistance,
                                  double to) noexcept;

/// Distance, m, of the same.
double run_up_distance_constant_power(double mass, double power, const Resistance& resistance,
                                      double to) noexcept;

/// Speed, m/s, after a distance from rest under a constant power.
double run_up_speed_constant_power(double mass, double power, const Resistance& resistance,
                                   double distance) noexcept;

}  // namespace windwall::road
