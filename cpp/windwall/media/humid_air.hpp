#pragma once

/// Moist air as a mixture of two ideal gases. Pressures in Pa absolute, temperatures in K, relative
/// humidity as a fraction, humidity ratio in kg of vapour per kg of dry air.
namespace windwall::media {

/// Over liquid water from 0.01 to 200 degC, over ice down to -100 degC; beyond, at the nearer end.
/// Hyland and Wexler 1983, the form of the ASHRAE Handbook, Fundamentals.
double saturation_pressure(double temperature) noexcept;

/// Partial pressure of the vapour; at most 95 % of the whole, so that some dry air is left.
double vapour_pressure(double relative_humidity, double temperature, double pressure) noexcept;
/// Partial pressure that belongs to a humidity ratio.
double vapour_pressure(double humidity_ratio, double pressure) noexcept;

double humidity_ratio(double relative_humidity, double temperature, double pressure) noexcept;

/// Dry air and vapour together, kg/m3.
double humid_air_density(double relative_humidity, double temperature, double pressure) noexcept;
/// What an engine burns with: the dry air alone, kg/m3.
double dry_air_density(double relative_humidity, double temperature, double pressure) noexcept;

/// Temperature in K at which vapour of this partial pressure begins to condense (or to freeze).
double dew_point(double vapour_pressure) noexcept;

}  // namespace windwall::media
