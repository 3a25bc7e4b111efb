#pragma once
#include <array>

namespace windwall::media {

/// Gases the charge path meets. `petrol` is the vapour of the petrol surrogate, see gas.cpp.
enum class Species { nitrogen, oxygen, argon, carbon_dioxide, water, methanol, ethanol, petrol };

/// Ideal gas, or a mixture of ideal gases, as one polynomial per kilogram; mixing by mass shares
/// is linear in every member. Stated for 200 to 1000 K; beyond, the heat capacity stays at the
/// value of the nearer end.
struct Gas {
    double R{};                 // J/(kg K)
    std::array<double, 5> c{};  // cp = c0 + c1 T + c2 T2 + c3 T3 + c4 T4, J/(kg K)
    double h0{};                // J/kg, so that h holds the enthalpy of formation at 298.15 K

    /// cp in J/(kg K) at T in kelvin.
    double heat_capacity(double T) const noexcept;
    /// h in J/kg at T in kelvin, zero for the elements at 298.15 K.
    double enthalpy(double T) const noexcept;
    /// cp/(cp - R) at T in kelvin.
    double gamma(double T) const noexcept;
    /// The temperature in kelvin that has this enthalpy, at least 1 K.
    double temperature(double enthalpy, double guess) const noexcept;
};

/// Constant heat capacity, enthalpy zero at 298.15 K.
Gas perfect_gas(double R, double cp) noexcept;
/// Dry air of the stated composition, R = 287.048 J/(kg K).
const Gas& dry_air() noexcept;
const Gas& species_gas(Species species) noexcept;
/// a + share x b in mass: `share` kilograms of b with every kilogram of a.
Gas mixed(const Gas& a, double share, const Gas& b) noexcept;
/// Adds `share` times every member of another, for a sum over parts of a mixture.
void add(Gas& sum, double share, const Gas& other) noexcept;

}  // namespace windwall::media
