#include "windwall/charge/throttle_area.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

/// Half the area a strip of half width `a` cuts from the unit circle.
double strip(double a) { return a * std::sqrt(1 - a * a) + std::asin(a); }

}  // namespace

double throttle_area(double bore, double shaft, double plate_angle, double closed_angle) noexcept {
    constexpr double pi = std::numbers::pi;
    const double angle = std::clamp(plate_angle, closed_angle, pi / 2);
    const double a = std::clamp(shaft / bore, 0.0, 1.0);
    const double k = std::cos(angle) / std::cos(closed_angle);  // half axis of the plate's ellipse
    const double whole = pi / 4 * bore * bore;
    // The shaft hides what it covers of the bore; of that, the plate's ellipse had a part already.
    const double open =
        k > a ? 1 - k + 2 / pi * (k * strip(a / k) - strip(a)) : 1 - 2 / pi * strip(a);
    return whole * std::max(open, 0.0);
}

}  // namespace windwall::charge
