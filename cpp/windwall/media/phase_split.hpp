#pragma once
#include "windwall/media/contents.hpp"

#include <array>

namespace windwall::media {

/// The liquid of water and alcohols that the last split ended with, as a start for one nearby.
struct LastLiquid {
    double alcohol_share = 0.5;  // moles of alcohol for each mole of this liquid
    double moles = -1;           // of this liquid for each mole of gas; none known below zero
};

/// The share of each substance that is vapour in equilibrium at a temperature in K, by Vapour. Root
/// finding inside root finding, each in a bracket: slow and sure. `last` is a first guess, left as
/// found.
std::array<double, 4> evaporated_shares(const Contents& contents, double temperature,
                                        LastLiquid& last) noexcept;

}  // namespace windwall::media
