#pragma once
#include "windwall/media/joint_balance.hpp"

namespace windwall::media::joint {

/// Where Newton starts, and which liquids there are likely to be.
struct Guess {
    Vector unknowns{};
    Sought sought{};
};

/// At an enthalpy in J per kg of dry air with which everything evaporated would have the
/// temperature `all_vapour`, K.
Guess guess_at_enthalpy(const Contents& contents, const Gas& all_liquid, double enthalpy,
                        double all_vapour) noexcept;
/// At a temperature.
Guess guess_at_temperature(const Contents& contents, double temperature) noexcept;

}  // namespace windwall::media::joint
