#pragma once
#include <algorithm>
#include <cmath>

/// Bounds and steps without a corner, so that a solver sees none.
namespace windwall::numerics {

/// 0 up to 0, 1 from 1 on, and level at both ends.
constexpr double smooth_step(double x) noexcept {
    const double inside = std::clamp(x, 0.0, 1.0);
    return inside * inside * (3 - 2 * inside);
}

/// Goes with `x` where that is small and never passes 1.
inline double saturated(double x) noexcept { return x / std::pow(1 + x * x * x * x, 0.25); }

}  // namespace windwall::numerics
