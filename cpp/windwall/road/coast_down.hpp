#pragma once
#include "windwall/road/resistance.hpp"

namespace windwall::road {

// Rolling to rest without drive. `mass` is the accelerated mass in kg: the wheels' rotation belongs
// to it. Speeds in m/s; `from` is the higher one, otherwise the answer is 0. Where the resistance
// ends above the speed asked for, time and distance are infinite.

/// Time, s, between two speeds.
double coast_down_time(double mass, const Resistance& resistance, double from, double to) noexcept;

/// The same for the force A + B v + C v^2, N and m/s.
double coast_down_time(double mass, double constant, double linear, double square, double from,
                       double to) noexcept;

/// Distance, m, between two speeds.
double coast_down_distance(double mass, const Resistance& resistance, double from,
                           double to) noexcept;

/// Speed, m/s, after a time in s, for a resistance that is not negative; 0 once at rest.
double coast_down_speed(double mass, const Resistance& resistance, double from,
                        double time) noexcept;

}  // namespace windwall::road
