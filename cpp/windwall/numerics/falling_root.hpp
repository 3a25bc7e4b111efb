#pragma once
#include <cmath>

namespace windwall::numerics {

/// A function's value and slope at one place.
struct Point {
    double value{}, slope{};
};

/// Root of a falling function between two ends where it changes sign: Newton, halved where it
/// would leave the bracket, until a step is no longer than `close` times the root.
template <class Function>
double falling_root(Function&& function, double low, double high, double x, double close) {
    for (int step = 0; step < 80; ++step) {
        const auto [value, slope] = function(x);
        (value > 0 ? low : high) = x;
        const double newton = x - value / slope;
        const bool inside = slope < 0 && newton >= low && newton <= high;
        const double next = inside ? newton : (low + high) / 2;
        const double change = std::abs(next - x);
        x = next;
        if (value == 0 || change <= close * std::abs(x)) break;
    }
    return x;
}

}  // namespace windwall::numerics
