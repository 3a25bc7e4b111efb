#include "windwall/media/standard_atmosphere.hpp"

#include "windwall/media/constants.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using namespace constants;

constexpr double lowest = -5000.0;                                              // m
constexpr double tropopause = 11e3;                                             // m
constexpr double pressure_exponent = gravity / (isa_gas_constant * isa_lapse);  // 5.25588
constexpr double sea_level_density = isa_pressure / (isa_gas_constant * isa_temperature);

}  // namespace

double geopotential_altitude(double geometric) noexcept {
    return isa_earth_radius * geometric / (isa_earth_radius + geometric);
}

double standard_temperature(double altitude) noexcept {
    return isa_temperature - isa_lapse * std::clamp(altitude, lowest, tropopause);
}

double standard_pressure(double altitude) noexcept {
    return isa_pressure *
           std::pow(standard_temperature(altitude) / isa_temperature, pressure_exponent);
}

double standard_density(double altitude) noexcept {
    return standard_pressure(altitude) / (isa_gas_constant * standard_temperature(altitude));
}

double station_pressure(double altitude, double sea_level_pressure) noexcept {
    const double temperature_ratio =
        std::pow(sea_level_pressure / isa_pressure, 1 / pressure_exponent);
    const double shift = (1 - temperature_ratio) * isa_temperature / isa_lapse;
    return standard_pressure(geopotential_altitude(altitude) + shift);
}

double density_altitude(double density) noexcept {
    const double fall =
        std::pow(std::max(density, 0.0) / sea_level_density, 1 / (pressure_exponent - 1));
    return std::clamp((1 - fall) * isa_temperature / isa_lapse, lowest, tropopause);
}

}  // namespace windwall::media
