#include "windwall/media/orifice.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

constexpr double last_exact_ratio = 0.9995;
constexpr double lowest_gamma = 1 + 1e-6;  // below, the closed form divides zero by zero
// exp(-1/2), which the critical ratio tends to as gamma falls to one: above it no gas is choked.
constexpr double highest_critical_ratio = 0.6066;

/// Critical density ratio, (2/(g+1))^(1/(g-1)).
double critical_density_ratio(double gamma) { return std::pow(2 / (gamma + 1), 1 / (gamma - 1)); }

/// Psi as printed in textbooks, sqrt(2g/(g-1) (r^(2/g) - r^((g+1)/g))); the difference is taken by
/// expm1 so that it stays exact near ratio 1.
double isentropic(double ratio, double gamma) {
    const double logarithm = std::log(ratio);
    const double fall = -std::expm1((gamma - 1) / gamma * logarithm);
    return std::exp(logarithm / gamma) * std::sqrt(2 * gamma / (gamma - 1) * fall);
}

/// d Psi/d ratio divided by Psi.
double relative_slope(double ratio, double gamma) {
    const double k = (gamma - 1) / gamma;
    const double power = std::pow(ratio, k);
    return (1 / gamma - k / 2 * power / (1 - power)) / ratio;
}

/// Odd cubic in x = 1 - ratio that meets Psi and its slope at the last exact ratio and passes
/// through zero with a finite slope, so that forward and reverse flow join smoothly.
double near_one(double ratio, double gamma) {
    const double width = 1 - last_exact_ratio;
    const double edge = isentropic(last_exact_ratio, gamma);
    const double slope = -edge * relative_slope(last_exact_ratio, gamma) * width;
    const double part = (1 - ratio) / width;
    return part * (1.5 * edge - 0.5 * slope + (0.5 * slope - 0.5 * edge) * part * part);
}

double forward_flow(double area, double pressure, double temperature, double downstream, double R,
                    double gamma) {
    if (!(pressure > 0)) return pressure <= 0 ? 0.0 : pressure;  // vacuum on both sides, or NaN
    return area * pressure / std::sqrt(R * temperature) *
           flow_function(downstream / pressure, gamma);
}

}  // namespace

double critical_ratio(double gamma) noexcept {
    const double g = std::max(gamma, lowest_gamma);
    return critical_density_ratio(g) * 2 / (g + 1);
}

double flow_function(double ratio, double gamma) noexcept {
    const double g = std::max(gamma, lowest_gamma);
    if (ratio >= 1) return 0;
    if (ratio > last_exact_ratio) return near_one(ratio, g);
    if (ratio > highest_critical_ratio) return isentropic(ratio, g);
    const double density_ratio = critical_density_ratio(g);
    if (ratio <= density_ratio * 2 / (g + 1)) return density_ratio * std::sqrt(2 * g / (g + 1));
    return isentropic(ratio, g);
}

double orifice_flow(double effective_area, double upstream_pressure, double upstream_temperature,
                    double downstream_pressure, double R, double gamma) noexcept {
    if (downstream_pressure > upstream_pressure)
        return -forward_flow(effective_area, downstream_pressure, upstream_temperature,
                             upstream_pressure, R, gamma);
    return forward_flow(effective_area, upstream_pressure, upstream_temperature,
                        downstream_pressure, R, gamma);
}

}  // namespace windwall::media
