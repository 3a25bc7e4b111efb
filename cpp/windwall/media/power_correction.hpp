#pragma once

/// Factors that turn a power measured on a dynamometer into the power of a reference day. They
/// describe a report and never enter the engine model, which has computed with the air of the day
/// already. Temperatures in K, pressures in Pa; the dry pressure is the barometer's reading less
/// the partial pressure of the vapour.
namespace windwall::media {

/// SAE J1349, form of June 1990: 1.18 (99 kPa/p_dry) sqrt((t + 273)/298) - 0.18, t in degC.
double j1349_factor(double dry_pressure, double temperature) noexcept;

/// ISO 1585 for spark ignition: (99 kPa/p_dry)^1.2 ((t + 273)/298)^0.6.
double iso1585_factor(double dry_pressure, double temperature) noexcept;
/// The standard holds a correction valid from 0.93 to 1.07 only.
bool iso1585_valid(double factor) noexcept;

/// DIN 70020, withdrawn: (1013 mbar/p) sqrt((t + 273)/293), p the whole pressure.
double din70020_factor(double pressure, double temperature) noexcept;

}  // namespace windwall::media
