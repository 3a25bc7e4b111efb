#pragma once

namespace windwall::engine {

/// Indicated efficiency of the constant-volume fuel-air cycle: isentropic compression of vapour,
/// air and 5 % residual, adiabatic burn to equilibrium, isentropic expansion in equilibrium.
/// Table for compression ratios 6 to 12 and equivalence ratios 0.6 to 1.4; in between and beyond
/// by the exponent x of 1 - ratio^-x.
double fuel_air_efficiency(double compression_ratio, double equivalence_ratio) noexcept;

/// Share of the fuel's energy that leaves as carbon monoxide and hydrogen, because rich mixtures
/// lack oxygen: water-gas equilibrium frozen at 1740 K, iso-octane. Zero for lean mixtures.
double unburnt_share(double equivalence_ratio) noexcept;

}  // namespace windwall::engine
