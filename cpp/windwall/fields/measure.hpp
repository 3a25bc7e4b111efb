#pragma once
#include <string_view>

namespace windwall::fields {

/// What a number measures. Pressure and temperature come in kinds, because 30 kPa above the
/// weather and 30 kPa of air are different facts, and so are 10 K hotter and 10 K.
enum class Dimension {
    number,
    length,
    area,
    volume,
    mass,
    time,
    speed,
    acceleration,
    angular_speed,
    angle,
    force,
    torque,
    absolute_pressure,
    gauge_pressure,
    pressure_difference,
    temperature,
    temperature_difference,
    power,
    energy,
    mass_flow,
    volume_flow,
    density,
    inertia,
    conductance,
    specific_energy,
    linear_density,
    per_length,
    viscosity,
    stiffness,
    money,
    labour,
};

/// A dimension together with the unit a scenario file uses for it unless it says otherwise.
struct Measure {
    Dimension dimension{};
    std::string_view unit;
};

constexpr Measure number() { return {Dimension::number, ""}; }
constexpr Measure percent() { return {Dimension::number, "%"}; }
constexpr Measure length(std::string_view unit) { return {Dimension::length, unit}; }
constexpr Measure area(std::string_view unit) { return {Dimension::area, unit}; }
constexpr Measure volume(std::string_view unit) { return {Dimension::volume, unit}; }
constexpr Measure mass(std::string_view unit) { return {Dimension::mass, unit}; }
constexpr Measure time(std::string_view unit) { return {Dimension::time, unit}; }
constexpr Measure speed(std::string_view unit) { return {Dimension::speed, unit}; }
constexpr Measure acceleration(std::string_view unit) { return {Dimension::acceleration, unit}; }
constexpr Measure angular_speed(std::string_view unit) { return {Dimension::angular_speed, unit}; }
constexpr Measure angle(std::string_view unit) { return {Dimension::angle, unit}; }
constexpr Measure force(std::string_view unit) { return {Dimension::force, unit}; }
constexpr Measure torque(std::string_view unit) { return {Dimension::torque, unit}; }
constexpr Measure absolute_pressure(std::string_view unit) {
    return {Dimension::absolute_pressure, unit};
}
constexpr Measure gauge_pressure(std::string_view unit) {
    return {Dimension::gauge_pressure, unit};
}
constexpr Measure pressure_difference(std::string_view unit) {
    return {Dimension::pressure_difference, unit};
}
constexpr Measure temperature(std::string_view unit) { return {Dimension::temperature, unit}; }
constexpr Measure temperature_difference(std::string_view unit) {
    return {Dimension::temperature_difference, unit};
}
constexpr Measure power(std::string_view unit) { return {Dimension::power, unit}; }
constexpr Measure energy(std::string_view unit) { return {Dimension::energy, unit}; }
constexpr Measure mass_flow(std::string_view unit) { return {Dimension::mass_flow, unit}; }
constexpr Measure volume_flow(std::string_view unit) { return {Dimension::volume_flow, unit}; }
constexpr Measure density(std::string_view unit) { return {Dimension::density, unit}; }
constexpr Measure inertia(std::string_view unit) { return {Dimension::inertia, unit}; }
constexpr Measure conductance(std::string_view unit) { return {Dimension::conductance, unit}; }
constexpr Measure specific_energy(std::string_view unit) {
    return {Dimension::specific_energy, unit};
}
constexpr Measure linear_density(std::string_view unit) {
    return {Dimension::linear_density, unit};
}
constexpr Measure per_length(std::string_view unit) { return {Dimension::per_length, unit}; }
constexpr Measure viscosity(std::string_view unit) { return {Dimension::viscosity, unit}; }
constexpr Measure stiffness(std::string_view unit) { return {Dimension::stiffness, unit}; }
constexpr Measure money(std::string_view unit) { return {Dimension::money, unit}; }
constexpr Measure labour(std::string_view unit) { return {Dimension::labour, unit}; }

}  // namespace windwall::fields
