#pragma once
#include "windwall/media/joint_balance.hpp"

namespace windwall::media::joint {

/// Where Newton starts, and which liquids there are likely to be.
struct Guess {
    Vector unknowns{};
    Sought sought{};
};

/// At an enthalpy with which everything evaporated would have the temperature `all_vapour`, below
/// which liquid forms.
Guess guess_at_enthalpy(const Contents& contents, double all_vapour) noexcept;
/// At a temperature.
Guess guess_at_temperature(const Contents& contents, double temperature) noexcept;

}  // namespace windwall::media::joint
