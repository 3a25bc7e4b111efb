#pragma once
#include "windwall/solve/part_load/held_torque.hpp"

#include <optional>

namespace windwall::solve {

/// Engine speed at which it idles where nothing else is asked, rad/s.
double idle_speed(const vehicle::Vehicle& vehicle) noexcept;

/// The spark of an idle, and what its jets give where a carburettor has them.
vehicle::IdleSetting idle_setting(const vehicle::Vehicle& vehicle) noexcept;

/// The engine alone, turning at a speed with nothing to drive but itself, its blower and its
/// accessories, with the spark of an idle: the pedal that holds it there. Standing in the wind of
/// `road_speed`.
Point idle(HeldTorque& held, const vehicle::Vehicle& vehicle, double engine_speed,
           double road_speed = 0);

}  // namespace windwall::solve
