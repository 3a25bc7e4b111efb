#pragma once
#include "windwall/charge/held.hpp"

#include <array>
#include <optional>

namespace windwall::charge {

/// What surrounds the charge path at one operating point, SI units.
struct Surroundings {
    double ambient_pressure{};            // Pa absolute
    double ambient_temperature{};         // K
    double air_density{};                 // of the ambient air, kg/m3
    double road_speed{};                  // speed of the air over the vehicle, m/s
    double drive_speed{};                 // rad/s, of the crank or what else turns the blower
    double throttle_opening{};            // share of the plate's travel: 0 shut, 1 wide open
    double under_hood_temperature{};      // K, of the air around pipes, plenum and blower case
    double outside_film = 15;             // W/(m2 K), from warm walls to that air
    std::array<double, 4> fuel_demand{};  // own fuel the engine's lambda asks for, kg per kg of
                                          // dry air, by media::Vapour
    double humidity_ratio{};              // kg of water vapour per kg of dry air
    double sensed_pressure{};             // Pa absolute, where the switch of a pump reads
    Held held{};                          // of the part that is asked
    double engine_speed{};                // rad/s, where a pump is switched by it
    std::optional<double> block{};        // K, of the engine's, where a drive holds it
};

}  // namespace windwall::charge
