#pragma once

namespace windwall::engine {

/// Mean effective pressure in Pa lost in one set of open valves, intake or exhaust. Rule of SAE
/// 890836 with the constant from memory: 4.12 Pa s2/m2 (ratio of manifold to ambient pressure x
/// mean piston speed in m/s)^2 / (valves^2 (valve over bore diameter)^4).
constexpr double valve_mean_pressure(double piston_speed, double pressure_ratio, double valves,
                                     double diameter_ratio) noexcept {
    const double flow = pressure_ratio * piston_speed / (valves * diameter_ratio * diameter_ratio);
    return 4.12 * flow * flow;
}

}  // namespace windwall::engine
