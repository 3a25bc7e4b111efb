#include "windwall/road/over_quadratic.hpp"
#include "windwall/road/run_up.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::road {

namespace {
constexpr double never = std::numeric_limits<double>::infinity();
}

double run_up_time_constant_force(double mass, double thrust, const Resistance& resistance,
                                  double from, double to) noexcept {
    if (to <= from) return 0;
    if (!(thrust > resistance.force(to))) return never;
    return mass * over_quadratic(thrust - resistance.constant, 0, -resistance.square, from, to);
}

double run_up_distance_constant_force(double mass, double thrust, const Resistance& resistance,
                                      double from, double to) noexcept {
    if (to <= from) return 0;
    const double excess_force = thrust - resistance.force(to);
    if (!(excess_force > 0)) return never;
    // m/(2c) ln of the excess force at the start over that at the end, written so that c may be 0.
    const double squares = to * to - from * from;
    const double loss = resistance.square * squares / excess_force;
    const double stretch = loss < 1e-8 ? 1 - loss / 2 : std::log1p(loss) / loss;
    return mass * squares / (2 * excess_force) * stretch;
}

double run_up_speed_constant_force(double mass, double thrust, const Resistance& resistance,
                                   double from, double distance) noexcept {
    const double exponent = 2 * resistance.square * distance / mass;
    const double stretch = exponent > 1e-12 ? -std::expm1(-exponent) / exponent : 1;
    const double excess_force = thrust - resistance.force(from);
    return std::sqrt(std::max(0.0, from * from + excess_force * 2 * distance / mass * stretch));
}

}  // namespace windwall::road
