#include "windwall/charge/pulses.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double intake_share = 240.0 / 720;  // of the cycle

/// Variance over all phases of what two windows have in common that recur with one period, each
/// open for a share of it; in periods squared. A window and the rest of its period share the
/// variance, so only halves count, and these never meet twice.
double overlap_variance(double one, double other) noexcept {
    const double half = std::min(one, 1 - one), other_half = std::min(other, 1 - other);
    const double a = std::min(half, other_half), b = std::max(half, other_half);
    return a * a * (b - a / 3) - a * a * b * b;
}

/// sin(pi x)/(pi x).
double sinc(double x) noexcept { return std::sin(std::numbers::pi * x) / (std::numbers::pi * x); }

/// The same over the square of the mean, of pulses that were stirred for a time in periods: each
/// tone of theirs weakened by the vessel, and by the average over a window.
double stirred(double window, double open, double mixing) noexcept {
    constexpr int tones = 200;
    double sum = 0;
    for (int n = 1; n <= tones; ++n) {
        const double tone = sinc(n * open) * sinc(n * window);
        const double turned = 2 * std::numbers::pi * n * mixing;
        sum += 2 * tone * tone / (1 + turned * turned);
    }
    return sum;
}

}  // namespace

double valve_open_share(double duty, double period, double dead_time) noexcept {
    return std::clamp(duty - dead_time / period, 0.0, 1.0);
}

double cycle_spread(double period, double open_share, double engine_speed,
                    double mixing_time) noexcept {
    if (!(engine_speed > 0 && open_share > 0)) return 0;
    const double window = intake_share * 4 * std::numbers::pi / engine_speed / period;
    if (mixing_time > 0) return std::sqrt(stirred(window, open_share, mixing_time / period));
    const double rest = window - std::floor(window);
    return std::sqrt(std::max(overlap_variance(rest, open_share), 0.0)) / (window * open_share);
}

}  // namespace windwall::charge
