#pragma once
#include "windwall/media/vapour.hpp"

#include <array>

namespace windwall::media {

/// Properties of a liquid near 25 degC, SI.
struct Liquid {
    double density;               // kg/m3
    double heat_capacity;         // J/(kg K)
    double latent_heat;           // J/kg at 25 degC
    double stoichiometric_ratio;  // kg of dry air per kg
    double heating_value;         // lower, of the liquid at 25 degC, J/kg
    double molar_mass;            // kg/mol
};

/// In the order of Vapour.
inline constexpr std::array<Liquid, 4> liquids{{
    // Water. Latent heat: CRC Handbook, 43.98 kJ/mol.
    {997, 4180, 2441e3, 0, 0, 18.01528e-3},
    // Methanol. Latent heat: CRC Handbook, 37.43 kJ/mol; heating value from NASA formation
    // enthalpies less the latent heat; air from the formula and 0.23139 oxygen by mass.
    {787, 2530, 1168e3, 6.474, 19.936e6, 32.04186e-3},
    // Ethanol. Latent heat: CRC Handbook, 42.32 kJ/mol; the rest as for methanol.
    {785, 2440, 919e3, 9.005, 26.813e6, 46.06844e-3},
    // Petrol, CH1.87. Density, heat capacity and latent heat: US DOE, Properties of Fuels; heating
    // value the middle of published 43.3 to 43.5 MJ/kg; molar mass of the surrogate in gas.cpp.
    {745, 2010, 349e3, 14.604, 43.4e6, 105.97e-3},
}};

constexpr const Liquid& liquid(Vapour vapour) noexcept { return liquids[index(vapour)]; }

/// m3 that these masses take, kg, by Vapour; volumes add up to within 0.3 % in fuels.
constexpr double volume_of(const std::array<double, 4>& masses) noexcept {
    double volume = 0;
    for (std::size_t i = 0; i < masses.size(); ++i)
        volume += masses[i] / liquids[i].density;
    return volume;
}

/// The same in proportion, adding up to 1.
constexpr std::array<double, 4> normalised(std::array<double, 4> shares) noexcept {
    const double all = shares[0] + shares[1] + shares[2] + shares[3];
    for (double& share : shares)
        share /= all;
    return shares;
}

/// Shares by mass of a blend of these volumes, by Vapour, in any unit.
constexpr std::array<double, 4> shares_by_mass(std::array<double, 4> volumes) noexcept {
    for (std::size_t i = 0; i < volumes.size(); ++i)
        volumes[i] *= liquids[i].density;
    return normalised(volumes);
}

}  // namespace windwall::media
