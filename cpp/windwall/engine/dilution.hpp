#pragma once
#include "windwall/engine/evaporation.hpp"
#include "windwall/engine/mixture.hpp"
#include "windwall/media/stream.hpp"

namespace windwall::engine {

/// What water, drops and burned gas in the charge make of its burning.
struct Burning {
    double dilution{};  // share of burned gas in the charge that would slow the flame as much
    double burnt{};     // share of what could burn that does
    double kept{};      // share of the work that evaporating in the flame leaves
};

/// From the charge, what burns with it, the residual's share of all gas and the share of its drops
/// that evaporates before the flame.
Burning burning(const media::Stream& charge, const AtValve& liquid, const Mixture& mixture,
                double residual, double evaporated) noexcept;

/// Burn duration over that at 5 % of burned gas: the flame slows by 2.1 times its share (Metghalchi
/// and Keck 1982, to 20 %); duration goes with the flame's speed to the power -0.85.
double slowed_burn(double dilution) noexcept;

/// Share that burns before the flame goes out: all of it to a quarter of burned gas, nothing at two
/// fifths. Limits of dilution 20 to 30 %, no source.
double share_that_burns(double dilution) noexcept;

}  // namespace windwall::engine
