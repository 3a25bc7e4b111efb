#pragma once

/// ISO 2533 / ICAO standard atmosphere, -5000 to 11 000 m; beyond, the nearer end is taken.
/// Altitudes are geopotential unless they say geometric.
namespace windwall::media {

/// Re z/(Re + z): what a height z in metres above sea level counts in constant gravity.
double geopotential_altitude(double geometric) noexcept;

double standard_temperature(double altitude) noexcept;  // K
double standard_pressure(double altitude) noexcept;     // Pa
double standard_density(double altitude) noexcept;      // kg/m3

/// Pressure in Pa at a geometric altitude in metres where the weather report gives this sea-level
/// pressure: the altimeter setting (QNH), which shifts the standard atmosphere in height.
double station_pressure(double altitude, double sea_level_pressure) noexcept;

/// Altitude in metres where the standard atmosphere has this density in kg/m3.
double density_altitude(double density) noexcept;

}  // namespace windwall::media
