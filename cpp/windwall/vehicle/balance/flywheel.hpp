#pragma once
#include "windwall/engine/work.hpp"
#include "windwall/vehicle/balance/balance.hpp"

namespace windwall::vehicle {

/// W that the blowers take from the crank in the last march, belts included.
double blower_power(const Balance& balance) noexcept;

/// N m at the flywheel, what the blowers take left off.
double flywheel_torque(const Balance& balance, const engine::Work& work) noexcept;

}  // namespace windwall::vehicle
