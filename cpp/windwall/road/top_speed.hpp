#pragma once
#include "windwall/road/resistance.hpp"

namespace windwall::road {

/// Speed in m/s at which a power in W at the wheels is used up in still air: the largest root of
/// c v^3 + a v = P. Infinite where nothing stops the vehicle, 0 where it cannot move off.
double top_speed_for_power(double power, const Resistance& resistance) noexcept;

/// The same with a headwind in m/s (negative from behind), for a resistance whose quadratic part is
/// all drag: the only root of (a + c (v + w) |v + w|) v = P.
double top_speed_in_wind(double power, const Resistance& resistance, double headwind) noexcept;

}  // namespace windwall::road
