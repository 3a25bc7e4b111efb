#pragma once
#include "windwall/engine/heat.hpp"
#include "windwall/engine/intake.hpp"
#include "windwall/engine/work.hpp"

namespace windwall::engine {

/// What leaves through the exhaust port.
struct ExhaustGas {
    double flow{};         // kg/s
    double heat{};         // W above the air that came in, without what could still burn
    double temperature{};  // K
    double port_heat{};    // W, left in cylinder and port on the way out
};

/// From the energy that enters and leaves the cylinders: fuel, what the charge brings above the air
/// that came in, and the work of pumping, less the indicated work, the heat to the chamber and what
/// is left unburnt; then less what cylinder and port take on its way out, to the head's temperature
/// in K. It knows nothing of the road and of what drives a blower.
ExhaustGas exhaust_gas(const Intake& intake, const Work& work, const Walls& walls,
                       double head_temperature, const Outflow& out) noexcept;

/// Where the fuel's heat goes beside the crank, with the gas that left at that work.
Heat heat(const Work& work, const ExhaustGas& gas) noexcept;

}  // namespace windwall::engine
