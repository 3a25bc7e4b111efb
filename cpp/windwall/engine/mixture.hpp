#pragma once
#include "windwall/media/fuel.hpp"
#include "windwall/media/stream.hpp"

namespace windwall::engine {

/// What burns with each kilogram of dry air.
struct Mixture {
    double lambda{};         // air over what all fuels together need
    double own_fuel{};       // kg through the engine's own fuel system
    double injected_fuel{};  // kg sprayed into the charge before, as vapour or drops
    double heating{};        // J, lower heating value of all of it as liquid
    double equivalence_ratio() const noexcept { return 1 / lambda; }
};

/// The engine's own fuel brings the mixture to `target`; where `trimmed`, with what was injected.
Mixture mix(const media::Stream& charge, const media::Fuel& fuel, double target,
            bool trimmed) noexcept;

}  // namespace windwall::engine
