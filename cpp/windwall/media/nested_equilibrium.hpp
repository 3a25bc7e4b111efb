#pragma once
#include "windwall/media/contents.hpp"

/// An equilibrium by root finding inside root finding, every root in a bracket: slow, and sure for
/// any contents. The measure of joint_equilibrium, and its net.
namespace windwall::media {

Phases nested_equilibrium_at_temperature(const Contents& contents, double temperature) noexcept;
/// `all_vapour` is the temperature with everything evaporated, K, at which liquid forms.
Phases nested_equilibrium(const Stream& stream, const Contents& contents,
                          double enthalpy_per_dry_air, double all_vapour) noexcept;

}  // namespace windwall::media
