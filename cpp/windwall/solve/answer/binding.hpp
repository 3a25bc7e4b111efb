#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/binding.hpp"
#include "windwall/solve/results/ending.hpp"

#include <optional>

/// Why a vehicle gets no faster, in numbers.
namespace windwall::solve {

/// What binds at the equilibrium.
Binding binding(const EquilibriumSpeed& equilibrium);

/// What would bind next and how far away it is; nothing where the torque steps or there is no
/// answer beyond.
std::optional<NextBinding> next_binding(const EquilibriumSpeed& equilibrium,
                                        const vehicle::Vehicle& vehicle);

/// Where the belt of a variator stands, where there is one in use.
std::optional<BeltPosition> belt_position(const vehicle::Vehicle& vehicle,
                                          driveline::GearState gear_state);

/// What has no answer, and so ends the climb or allows none; nothing where a vehicle stands still
/// because the road takes the whole thrust.
std::optional<Tried> unanswered(const TopSpeed& found);

}  // namespace windwall::solve
