#pragma once
#include "windwall/driveline/stance.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/driveline/variator.hpp"

#include <optional>

/// The train asked with a stance, while no part of it has a variator. Once driveline/train.hpp takes
/// a stance itself, it is included in place of this file.
namespace windwall::driveline {

inline std::optional<Variator> variator(const Train&) noexcept { return std::nullopt; }
inline double total_ratio(const Train& train, Stance stance) noexcept {
    return total_ratio(train, stance.gear);
}
inline Shaft drive(const Train& train, const Shaft& crank, Stance stance,
                   std::span<double> losses = {}) noexcept {
    return drive(train, crank, stance.gear, losses);
}
inline double inertia_at_wheels(const Train& train, Stance stance) noexcept {
    return inertia_at_wheels(train, stance.gear);
}

}  // namespace windwall::driveline
