#pragma once
#include <array>

namespace windwall::media {

/// The liquid of water and alcohols that the last split ended with, as a start for one nearby.
struct LastLiquid {
    double alcohol_share = 0.5;  // moles of alcohol for each mole of this liquid
    double moles = -1;           // of this liquid for each mole of gas; none known below zero
};

/// The share of each substance that is vapour in equilibrium, given the moles of all of it for each
/// mole of dry air, by Vapour, a temperature in K and a pressure in Pa. Root finding inside root
/// finding, each in a bracket: slow and sure. `last` is a first guess, left as found.
std::array<double, 4> evaporated_shares(const std::array<double, 4>& moles, double temperature,
                                        double pressure, LastLiquid& last) noexcept;

}  // namespace windwall::media
