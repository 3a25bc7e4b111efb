#pragma once
#include "windwall/media/fuel.hpp"
#include "windwall/media/stream.hpp"

#include <array>

namespace windwall::engine {

/// What burns with each kilogram of dry air.
struct Mixture {
    double lambda{};                  // air over what all fuels together need
    double own_fuel{};                // kg through the engine's own fuel system
    double injected_fuel{};           // kg that came with the charge, as vapour or drops
    std::array<double, 4> port{};     // the same by Vapour, injected at the port
    double tank_fuel{};               // kg of the fuel in the tank, however it came
    std::array<double, 4> sprayed{};  // kg that came with the charge beside it, by Vapour
    double heating{};                 // J, lower heating value of all of it as liquid
    double equivalence_ratio() const noexcept { return 1 / lambda; }
};

/// What a lambda asks for of a fuel, kg of each liquid per kg of dry air, by Vapour.
std::array<double, 4> fuel_for(double lambda, const media::Fuel& fuel) noexcept;

/// The engine's own fuel brings the mixture to `target`; where `trimmed`, with what was injected.
Mixture mix(const media::Stream& charge, const media::Fuel& fuel, double target,
            bool trimmed) noexcept;

/// The engine's own fuel is what `air` kg of air per kg of dry air need.
Mixture mix_for(const media::Stream& charge, const media::Fuel& fuel, double air) noexcept;

/// Air that all fuels need which a charge carries, kg per kg of dry air.
double air_for_injected(const media::Stream& charge) noexcept;

/// The fuel came with the charge: the engine adds none, and the mixture is what the charge carries.
Mixture mix_carburetted(const media::Stream& charge, const media::Fuel& fuel) noexcept;

/// Octane index of all that burns, alcohols by their molecules. An alcohol that evaporates from the
/// modelled gas, of the tank's fuel the share `from_gas`, counts with its motor number, measured in
/// a heated mixture: what it cools is in the temperature of the charge already. What is sprayed
/// never counts against the fuel in the tank.
double octane_index(const Mixture& mixture, const media::Fuel& fuel, double sensitivity_weight,
                    double from_gas) noexcept;

}  // namespace windwall::engine
