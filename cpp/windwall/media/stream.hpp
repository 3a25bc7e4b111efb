#pragma once
#include "windwall/media/gas.hpp"
#include "windwall/media/vapour.hpp"

#include <array>

namespace windwall::media {

/// What flows through the charge path at one station.
struct Stream {
    double pressure{};               // Pa absolute
    double temperature{};            // K
    double dry_air{};                // kg/s
    std::array<double, 4> vapour{};  // kg per kg dry air, by Vapour
    std::array<double, 4> liquid{};  // kg per kg dry air, by Vapour
    Gas gas;                         // of the gas phase: dry air and vapours
    double drop_diameter{};          // Sauter mean of the liquid in flight, m; 0 without drops
    double film_share{};             // of the liquid, what runs along the walls
    double fed{};                    // J per kg dry air, brought in by every liquid put in upstream

    /// All vapours together, kg per kg dry air.
    double vapour_share() const noexcept;
    /// Dry air and vapours, kg/s.
    double gas_flow() const noexcept;
    /// Of the gas phase, kg/m3; the volume of the drops is neglected.
    double density() const noexcept;
    /// All liquids together, in flight and on the walls, kg per kg dry air.
    double liquid_share() const noexcept;
};

/// A vapour alone.
const Gas& vapour_gas(Vapour vapour) noexcept;
/// One kilogram of dry air with these vapours, as one gas.
Gas gas_phase(const std::array<double, 4>& vapour) noexcept;

/// Air of a day: only water vapour, no liquid.
Stream ambient_stream(double pressure, double temperature, double humidity_ratio,
                      double dry_air) noexcept;

}  // namespace windwall::media
