#pragma once

namespace windwall::charge {

/// Work of one revolution of a positive-displacement blower on the gas, J: what was taken in at p1
/// is compressed inside by the built-in volume ratio, then meets the outlet pressure at constant
/// volume, from either side. p1 Vd [(v^(g-1) - 1)/(g-1) + r/v - 1]; Vd (p2 - p1) for v = 1 (Roots).
double blower_indicated_work(double inlet_pressure, double outlet_pressure, double displacement,
                             double built_in_ratio, double gamma) noexcept;

/// Isentropic work over the work of an ideal Roots blower at a pressure ratio above zero:
/// g/(g-1) (r^((g-1)/g) - 1)/(r - 1), and 1 at r = 1.
double roots_efficiency(double pressure_ratio, double gamma) noexcept;

/// Speed in rad/s that a blower of `displacement` m3 per revolution turns only to make up for its
/// leak: an incompressible jet through `leak_area` m2 (effective) at the density of the inlet.
double slip_speed(double leak_area, double displacement, double pressure_rise,
                  double inlet_pressure, double inlet_temperature, double gas_constant) noexcept;

}  // namespace windwall::charge
