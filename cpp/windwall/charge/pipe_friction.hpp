#pragma once

namespace windwall::charge {

/// Darcy friction factor of a round pipe for any Reynolds number above 0.001, laminar to rough
/// turbulent in one formula. Churchill, Chemical Engineering 84 (1977) 91.
double darcy_friction_factor(double reynolds, double relative_roughness) noexcept;

/// Dynamic viscosity of air, Pa s, at a temperature in kelvin. U.S. Standard Atmosphere 1976,
/// eq. 51.
double air_viscosity(double temperature) noexcept;

/// Pressure loss of a round pipe with bends, Pa, incompressible: (f length/bore + loss) rho V^2/2.
/// Flow in kg/s, the rest SI; `loss_coefficient` is the sum over bends and changes of section,
/// each referred to the pipe's velocity. Odd in the flow. Some 1 % low at Mach 0.09, 5 % at 0.17.
double duct_pressure_drop(double flow, double density, double viscosity, double length, double bore,
                          double loss_coefficient, double roughness) noexcept;

}  // namespace windwall::charge
