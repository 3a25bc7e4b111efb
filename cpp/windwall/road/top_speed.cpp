#include "windwall/road/top_speed.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::road {

namespace {

// Against a braking slope: v^3 + p v = q with p > 0. The hyperbolic form keeps every digit where
// Cardano's cancels.
double against_slope(double p, double q) noexcept {
    const double argument = 1.5 * (q / p) * std::sqrt(3 / p);
    if (argument > 1e100) return std::cbrt(q);
    return 2 * std::sqrt(p / 3) * std::sinh(std::asinh(argument) / 3);
}

// With a pulling slope: v^3 - p v = q with p > 0; the largest root.
double with_slope(double p, double q) noexcept {
    const double argument = 1.5 * (q / p) * std::sqrt(3 / p);
    if (argument > 1e100) return std::cbrt(q);
    const double third =
        argument < 1 ? std::cos(std::acos(argument) / 3) : std::cosh(std::acosh(argument) / 3);
    return 2 * std::sqrt(p / 3) * third;
}

double without_drag(double power, double constant) noexcept {
    if (constant > 0) return power / constant;
    return power > 0 || constant < 0 ? std::numeric_limits<double>::infinity() : 0;
}

}  // namespace

double top_speed_for_power(double power, const Resistance& resistance) noexcept {
    const auto [a, c] = resistance;
    const double driven = std::max(power, 0.0);
    if (!(c > 0)) return without_drag(driven, a);
    if (a == 0) return std::cbrt(driven / c);
    return a > 0 ? against_slope(a / c, driven / c) : with_slope(-a / c, driven / c);
}

double top_speed_in_wind(double power, const Resistance& resistance, double headwind) noexcept {
    const auto [a, c] = resistance;
    if (headwind == 0 || !(c > 0)) return top_speed_for_power(power, resistance);
    if (power <= 0) return std::max(0.0, std::copysign(std::sqrt(std::abs(a) / c), -a) - headwind);

    // At the still-air speed past the air, a wind from ahead asks for too much power; so does one
    // from behind at that speed and the wind's together.
    const double high = top_speed_for_power(power, resistance) + std::max(0.0, -headwind);
    const auto excess_force = [&, a = a, c = c](double speed) {
        const double air = speed + headwind;
        return (a + c * air * std::abs(air)) * speed - power;
    };
    return numerics::find_root(excess_force, 0.0, high, {.absolute = 0, .relative = 1e-14}).x;
}

}  // namespace windwall::road
