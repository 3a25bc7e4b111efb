#pragma once

namespace windwall::engine {

/// Mean effective pressure in Pa lost in one set of open valves, intake or exhaust, from the mean
/// piston speed in m/s and the density of the gas over 1.184 kg/m3: 4.12 Pa s2/m2 x density ratio x
/// (speed / (valves (valve over bore diameter)^2))^2. Form of SAE 890836, constant not read there.
/// It grows there with the square of manifold over ambient pressure; the piston fixes the speed of
/// the gas, so the drop of an orifice grows with the density alone.
constexpr double valve_mean_pressure(double piston_speed, double density_ratio, double valves,
                                     double diameter_ratio) noexcept {
    const double flow = piston_speed / (valves * diameter_ratio * diameter_ratio);
    return 4.12 * density_ratio * flow * flow;
}

}  // namespace windwall::engine
