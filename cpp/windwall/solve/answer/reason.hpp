#pragma once
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"

#include <array>
#include <string>
#include <string_view>

/// The words for how a solve ended, with its numbers.
namespace windwall::solve {

/// Why a point has no answer, or what its answer is worth.
std::string sentence(const Point& point);

/// What may bind at the equilibrium. The words are those of results.
inline constexpr std::array<std::string_view, 7> binding_names{
    "drag", "rev_limit", "grip", "knock", "torque_step", "no_answer", "standstill"};
/// Which of them does.
std::string_view limited_by(const EquilibriumSpeed& equilibrium);

/// The gear, where there are several, and where the belt of a variator stands; each with a space
/// before it, nothing where the vehicle has one ratio.
std::string gearing(const vehicle::Vehicle& vehicle, driveline::GearState gear_state);

/// Where the climb of a vehicle ends and why.
std::string sentence(const TopSpeed& found, const vehicle::Vehicle& vehicle);

/// Which condition would bind next and how far away it is.
std::string next_to_bind(const EquilibriumSpeed& equilibrium, const vehicle::Vehicle& vehicle);

}  // namespace windwall::solve
