#include "windwall/charge/blower_work.hpp"

#include <cmath>
#include <numbers>

namespace windwall::charge {

double blower_indicated_work(double inlet_pressure, double outlet_pressure, double displacement,
                             double built_in_ratio, double gamma) noexcept {
    if (built_in_ratio == 1) return displacement * (outlet_pressure - inlet_pressure);
    const double inside = (std::pow(built_in_ratio, gamma - 1) - 1) / (gamma - 1);
    return displacement * (inlet_pressure * (inside - 1) + outlet_pressure / built_in_ratio);
}

double roots_efficiency(double pressure_ratio, double gamma) noexcept {
    const double exponent = (gamma - 1) / gamma;
    const double rise = pressure_ratio - 1;
    if (rise == 0) return 1;
    return std::expm1(exponent * std::log1p(rise)) / (exponent * rise);
}

double slip_speed(double leak_area, double displacement, double pressure_rise,
                  double inlet_pressure, double inlet_temperature, double gas_constant) noexcept {
    const double density = inlet_pressure / (gas_constant * inlet_temperature);
    const double jet =
        std::copysign(std::sqrt(2 * std::abs(pressure_rise) / density), pressure_rise);
    return 2 * std::numbers::pi * leak_area * jet / displacement;
}

}  // namespace windwall::charge
