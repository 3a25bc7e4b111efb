#pragma once
#include "windwall/media/contents.hpp"

#include <optional>

/// An equilibrium by Newton in all of its unknowns at once, from a guess of its own. A few steps
/// find nearly all of them; where they do not, there is no answer and nested_equilibrium has it.
namespace windwall::media {

std::optional<Phases> joint_equilibrium_at_temperature(const Contents& contents,
                                                       double temperature) noexcept;
/// `all_vapour` is the temperature with everything evaporated, K, at which liquid forms.
std::optional<Phases> joint_equilibrium(const Contents& contents, double enthalpy_per_dry_air,
                                        double all_vapour) noexcept;

}  // namespace windwall::media
