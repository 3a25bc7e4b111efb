#include "windwall/numerics/root.hpp"
#include "windwall/road/run_up.hpp"
#include "windwall/road/top_speed.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::road {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

/// P - a v - c v^3 = (top - v)(c v^2 + c top v + hold), split into partial fractions.
struct Surplus {
    double top;  // terminal speed
    double c;
    double hold;  // force that holds the terminal speed, a + c top^2

    /// Integral from 0 to v of (near / (top - v) + (slope v + level) / (c v^2 + c top v + hold)).
    double integral(double v, double near, double slope, double level) const noexcept {
        const double root = std::sqrt(c * (4 * hold - c * top * top));
        const double arc = 2 / root * std::atan2(root * v, 2 * hold + c * top * v);
        return -near * std::log1p(-v / top) +
               slope / (2 * c) * std::log1p(c * v * (v + top) / hold) +
               (level - slope * top / 2) * arc;
    }
};

// Drag so small that its cube is lost beside the rolling resistance.
bool drag_counts(const Resistance& resistance, double top) noexcept {
    return resistance.square * top * top > 1e-8 * resistance.constant;
}

}  // namespace

double run_up_time_constant_power(double mass, double power, const Resistance& resistance,
                                  double to) noexcept {
    if (to <= 0) return 0;
    const double top = top_speed_for_power(power, resistance);
    if (std::isinf(top)) return mass * to * to / (2 * power);
    if (to >= top) return never;
    if (!drag_counts(resistance, top))
        return mass / resistance.constant * (-to - top * std::log1p(-to / top));
    const auto [a, c] = resistance;
    const Surplus excess_force{top, c, a + c * top * top};
    const double near = top / (a + 3 * c * top * top);
    return mass * excess_force.integral(to, near, near * c, -near * excess_force.hold / top);
}

double run_up_distance_constant_power(double mass, double power, const Resistance& resistance,
                                      double to) noexcept {
    if (to <= 0) return 0;
    const double top = top_speed_for_power(power, resistance);
    if (std::isinf(top)) return mass * to * to * to / (3 * power);
    if (to >= top) return never;
    if (!drag_counts(resistance, top))
        return mass / resistance.constant *
               (-to * to / 2 - top * to - top * top * std::log1p(-to / top));
    const auto [a, c] = resistance;
    const Surplus excess_force{top, c, a + c * top * top};
    const double near = top * top / (a + 3 * c * top * top);
    return mass * excess_force.integral(to, near, near * c - 1, -near * excess_force.hold / top);
}

double run_up_speed_constant_power(double mass, double power, const Resistance& resistance,
                                   double distance) noexcept {
    if (!(power > 0) || !(distance > 0)) return 0;
    // Without any resistance it would be faster, and nothing passes the terminal speed.
    const double free = std::cbrt(3 * power * distance / mass);
    const double top = top_speed_for_power(power, resistance) * (1 - 1e-14);
    const double high = std::min(free, top);
    const auto beyond = [&](double speed) {
        return run_up_distance_constant_power(mass, power, resistance, speed) - distance;
    };
    if (beyond(high) <= 0) return high;
    return numerics::find_root(beyond, 0.0, high, {.absolute = 0, .relative = 1e-13}).x;
}

}  // namespace windwall::road
