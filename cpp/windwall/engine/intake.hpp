#pragma once
#include "windwall/engine/mixture.hpp"
#include "windwall/media/stream.hpp"

#include <optional>

namespace windwall::engine {

/// What the engine sees at its two ends, manifold and exhaust, at one operating point. SI units.
struct Intake {
    double engine_speed{};            // rad/s
    media::Stream charge;             // at the manifold
    double ambient_pressure{};        // Pa absolute
    double ambient_temperature{};     // K
    double road_speed{};              // m/s, of the air over the vehicle: it cools the head
    double under_hood_temperature{};  // K
    bool carburetted{};               // the fuel is in the charge; the engine adds none of its own
    double inlet_enthalpy{};          // of the air that came in, J per kg of dry air
    /// Pa absolute behind the valves, where a turbine there holds it; else it follows from the
    /// flow.
    std::optional<double> exhaust_pressure{};
    /// Taken off the engine's own lambda where knock is held off by a richer mixture.
    double enrichment{};
    /// Share of the engine's own fuel that a pump takes off while it runs, where one does.
    std::optional<double> fuel_cut{};
    /// Air, kg per kg of dry air, whose own fuel has been taken off for fuel in the charge, where
    /// an integration over time holds that; else all that the fuel in the charge needs.
    std::optional<double> trim{};
    /// K, where something outside holds the head; else it follows from its heat balance.
    std::optional<double> head_temperature{};
    std::optional<double> oil_temperature{};    // K, likewise
    std::optional<double> block_temperature{};  // K, likewise: what the oil is cooled by
    /// What burns, where that is worked out; else it follows from charge and fuel.
    std::optional<Mixture> burnt{};
};

}  // namespace windwall::engine
