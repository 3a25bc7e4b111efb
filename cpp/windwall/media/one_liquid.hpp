#pragma once
#include "windwall/media/contents.hpp"

namespace windwall::media::joint {

/// A liquid as if it were one substance that follows Clapeyron's law: a first idea of where its
/// equilibrium is. The mixture of water and alcohols counts with the composition of all of it.
struct OneLiquid {
    double moles{};      // of it and its vapour, for each mole of dry air
    double latent{};     // to evaporate all of it, J per kg of dry air
    double at{};         // K, where its pressure was taken
    double K{};          // vapour pressure over the whole pressure there
    double last{};       // the same for its last drop, over that
    double steepness{};  // -d ln(K)/d(1/T), K

    double volatility(double T) const noexcept;
    /// Moles of its vapour, at most all of it.
    double vapour(double T) const noexcept;
    bool is_wet(double T) const noexcept;
    /// Latent heat in its vapour, J per kg of dry air, and the slope.
    double heat(double T) const noexcept;
    double heat_slope(double T) const noexcept;
};

OneLiquid mixture_as_one(const Contents& contents, double temperature) noexcept;
OneLiquid petrol_as_one(const Contents& contents, double temperature) noexcept;

}  // namespace windwall::media::joint
