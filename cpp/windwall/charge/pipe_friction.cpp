#include "windwall/charge/pipe_friction.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double lowest_reynolds = 1e-3;  // keeps 64/Re finite where nothing flows

double power_16(double x) {
    const double x4 = x * x * x * x;
    return x4 * x4 * x4 * x4;
}

double power_12(double x) {
    const double x4 = x * x * x * x;
    return x4 * x4 * x4;
}

}  // namespace

double darcy_friction_factor(double reynolds, double relative_roughness) noexcept {
    const double Re = std::max(reynolds, lowest_reynolds);
    const double rough = 2.457 * std::log(1 / (std::pow(7 / Re, 0.9) + 0.27 * relative_roughness));
    const double turbulent = power_16(rough) + power_16(37530 / Re);
    return 8 * std::pow(power_12(8 / Re) + 1 / (turbulent * std::sqrt(turbulent)), 1.0 / 12);
}

double air_viscosity(double temperature) noexcept {
    return 1.458e-6 * temperature * std::sqrt(temperature) / (temperature + 110.4);
}

double duct_pressure_drop(double flow, double density, double viscosity, double length, double bore,
                          double loss_coefficient, double roughness) noexcept {
    const double area = std::numbers::pi / 4 * bore * bore;
    const double velocity = flow / (density * area);
    const double reynolds = density * std::abs(velocity) * bore / viscosity;
    const double friction = darcy_friction_factor(reynolds, roughness / bore) * length / bore;
    return (friction + loss_coefficient) * density * velocity * std::abs(velocity) / 2;
}

}  // namespace windwall::charge
