#pragma once

namespace windwall::charge {

/// What is left of 1 after losing `lost`: exactly 1 - lost up to one half, then 1/(4 lost), which
/// continues value and slope and never reaches zero.
constexpr double share_left(double lost) noexcept { return lost <= 0.5 ? 1 - lost : 0.25 / lost; }

/// Absolute pressure behind a loss, Pa. Losses of more than half the pressure, where the formulas
/// for incompressible flow have lost their meaning, saturate smoothly and stay in order.
constexpr double pressure_after(double pressure, double loss) noexcept {
    return pressure * share_left(loss / pressure);
}

}  // namespace windwall::charge
