#pragma once
#include <cstddef>

namespace windwall::driveline {

/// How the driveline is set at one moment: the gear it is in, and where its variator stands if it
/// has one. Parts of fixed ratio look at the gear only, or at nothing.
struct GearState {
    std::size_t gear = 0;  // from 0
    double position = 1;   // of a variator: 0 at its lowest gearing, 1 at its highest

    constexpr GearState() noexcept = default;
    /// A gear alone is a state too, with the variator fully shifted.
    constexpr GearState(std::size_t in_gear, double at = 1) noexcept
        : gear(in_gear), position(at) {}
};

}  // namespace windwall::driveline
