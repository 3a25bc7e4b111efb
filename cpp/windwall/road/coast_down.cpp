#include "windwall/road/coast_down.hpp"

#include "windwall/road/over_quadratic.hpp"
#include "windwall/road/road_load.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace windwall::road {

namespace {
constexpr double never = std::numeric_limits<double>::infinity();
}

double coast_down_time(double mass, double constant, double linear, double square, double from,
                       double to) noexcept {
    if (from <= to) return 0;
    if (!(road_load_polynomial(to, constant, linear, square) > 0)) return never;
    return mass * over_quadratic(constant, linear, square, to, from);
}

double coast_down_time(double mass, const Resistance& resistance, double from, double to) noexcept {
    return coast_down_time(mass, resistance.constant, 0, resistance.square, from, to);
}

double coast_down_distance(double mass, const Resistance& resistance, double from,
                           double to) noexcept {
    if (from <= to) return 0;
    const double end = resistance.force(to);
    if (!(end > 0)) return never;
    // m/(2c) ln(F_from / F_to), written so that c may be 0.
    const double squares = from * from - to * to;
    const double gain = resistance.square * squares / end;
    const double stretch = gain < 1e-8 ? 1 - gain / 2 : std::log1p(gain) / gain;
    return mass * squares / (2 * end) * stretch;
}

double coast_down_speed(double mass, const Resistance& resistance, double from,
                        double time) noexcept {
    const auto [a, c] = resistance;
    // tan(angle) of the closed form over its root: with the root at 0 it is the time itself.
    const double root = std::sqrt(std::max(0.0, a * c));
    const double per_mass = time / mass;
    const double angle = root * per_mass;
    if (angle >= std::numbers::pi / 2) return 0;
    const double tangent = root > 0 ? std::tan(angle) / root : per_mass;
    return std::max(0.0, (from - a * tangent) / (1 + c * from * tangent));
}

}  // namespace windwall::road
