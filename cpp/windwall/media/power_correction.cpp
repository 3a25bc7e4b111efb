#include "windwall/media/power_correction.hpp"

#include "windwall/media/constants.hpp"

#include <cmath>

namespace windwall::media {
namespace {

constexpr double dry_reference = 99e3;       // Pa
constexpr double total_reference = 101.3e3;  // Pa

/// (t + 273)/reference with t in degC: the standards round the offset, and so the factor is 1 at
/// their reference temperature.
double temperature_ratio(double temperature, double reference) {
    return (temperature - constants::zero_celsius + 273) / reference;
}

}  // namespace

double j1349_factor(double dry_pressure, double temperature) noexcept {
    const double ratio = std::sqrt(temperature_ratio(temperature, 298));
    return 1.18 * (dry_reference / dry_pressure) * ratio - 0.18;
}

double iso1585_factor(double dry_pressure, double temperature) noexcept {
    return std::pow(dry_reference / dry_pressure, 1.2) *
           std::pow(temperature_ratio(temperature, 298), 0.6);
}

bool iso1585_valid(double factor) noexcept { return factor >= 0.93 && factor <= 1.07; }

double din70020_factor(double pressure, double temperature) noexcept {
    return total_reference / pressure * std::sqrt(temperature_ratio(temperature, 293));
}

}  // namespace windwall::media
