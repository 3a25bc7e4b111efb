#pragma once
#include <array>

/// Every physical constant of the project, once, each with its source. SI units.
namespace windwall::media::constants {

/// Molar gas constant, J/(mol K). Exact since the 2019 revision of the SI.
inline constexpr double molar_gas = 8.314462618;
/// Standard acceleration of free fall, m/s2. CGPM 1901, ISO 80000-3.
inline constexpr double gravity = 9.80665;
/// Offset between the Celsius and the kelvin scale, K.
inline constexpr double zero_celsius = 273.15;
/// Aluminium at 25 degC: heat capacity, J/(kg K), and density, kg/m3; NASA polynomial
/// of Al(cr), and as handbooks have it.
inline constexpr double aluminium_heat_capacity = 897;
inline constexpr double aluminium_density = 2700;
/// Reference temperature of formation enthalpies, K (25 degC).
inline constexpr double reference_temperature = 298.15;

// Standard atmosphere: ISO 2533:1975, ICAO Doc 7488. This gas constant serves nowhere else.
inline constexpr double isa_pressure = 101325.0;       // Pa at sea level
inline constexpr double isa_temperature = 288.15;      // K at sea level
inline constexpr double isa_lapse = 0.0065;            // K/m up to 11 km
inline constexpr double isa_gas_constant = 287.05287;  // J/(kg K)
inline constexpr double isa_earth_radius = 6356766.0;  // m

// Molar masses, kg/mol, from the atomic weights IUPAC 2001: H 1.00794, C 12.0107, N 14.0067,
// O 15.9994, Ar 39.948.
inline constexpr double molar_mass_nitrogen = 28.0134e-3;
inline constexpr double molar_mass_oxygen = 31.9988e-3;
inline constexpr double molar_mass_argon = 39.948e-3;
inline constexpr double molar_mass_carbon_dioxide = 44.0095e-3;
inline constexpr double molar_mass_water = 18.01528e-3;
inline constexpr double molar_mass_methanol = 32.04186e-3;
inline constexpr double molar_mass_ethanol = 46.06844e-3;
inline constexpr double molar_mass_iso_octane = 114.22852e-3;
inline constexpr double molar_mass_toluene = 92.13842e-3;

// Dry air by mole: the composition of ISO 2533 with its small gases counted as nitrogen and carbon
// dioxide. Gives 28.9654 g/mol and 287.048 J/(kg K).
inline constexpr double air_nitrogen = 0.78084;
inline constexpr double air_oxygen = 0.20946;
inline constexpr double air_argon = 0.00934;
inline constexpr double air_carbon_dioxide = 0.00036;
inline constexpr double molar_mass_air =
    air_nitrogen * molar_mass_nitrogen + air_oxygen * molar_mass_oxygen +
    air_argon * molar_mass_argon + air_carbon_dioxide * molar_mass_carbon_dioxide;
inline constexpr double gas_constant_air = molar_gas / molar_mass_air;
inline constexpr double gas_constant_water = molar_gas / molar_mass_water;
/// Mass fraction of oxygen in dry air, 0.20946 x 31.998 / 28.9654.
inline constexpr double air_oxygen_mass = 0.23139;

}  // namespace windwall::media::constants
