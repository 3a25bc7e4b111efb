#pragma once

#include <numbers>

namespace windwall::engine {

/// A charge at bottom dead centre, and how it will burn: what its end gas goes through.
struct EndGas {
    double compression_ratio{};
    double engine_speed{};   // rad/s
    double pressure{};       // Pa absolute, at bottom dead centre
    double temperature{};    // K, at bottom dead centre
    double exponent{};       // isentropic, of the charge with its fuel, vapours and residual
    double gas_constant{};   // J/(kg K)
    double heat{};           // J per kg of charge that act on the pressure
    double burn_start{};     // rad after top dead centre
    double burn_duration{};  // rad, from 0 to 100 % burnt
};

/// Ignition delay in s of a fuel of an octane number, at a pressure in Pa and a temperature in K.
/// Douaud and Eyzat, SAE 780080; its four numbers as they are commonly quoted, not read there, and
/// held against measured sensitivities. Octane numbers of 80 to 100.
double ignition_delay(double octane_number, double pressure, double temperature) noexcept;

/// Share burnt at a part of the burn duration, 0 to 1: Wiebe with a = 5 and m = 2, normalised.
double burnt_share(double part) noexcept;
/// The part of the burn duration at which a share is burnt.
double part_at_burnt(double share) noexcept;

/// Livengood-Wu integral of the end gas for a fuel of octane number 100, up to 85 % burnt; 1 means
/// that it just ignites. Single-zone pressure of a charge with one exponent, isentropic end gas,
/// rods of 3.5 cranks.
double knock_integral(const EndGas& charge) noexcept;

/// The octane number that makes the integral 1: 100 I^(1/3.402).
double octane_of_integral(double integral) noexcept;

/// Integrals this thread has evaluated; for those who promise how many.
long knock_integrals() noexcept;

}  // namespace windwall::engine
