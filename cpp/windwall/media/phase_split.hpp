#pragma once
#include <array>

namespace windwall::media {

/// What of each substance is vapour, given all of it: moles for each mole of dry air, by Vapour, at
/// a temperature in K and a pressure in Pa, in equilibrium. `alcohol_share` is the mole share of
/// alcohol in the liquid of water and alcohols; given as a first guess, left as found.
std::array<double, 4> vapour_moles(const std::array<double, 4>& moles, double temperature,
                                   double pressure, double& alcohol_share) noexcept;

}  // namespace windwall::media
