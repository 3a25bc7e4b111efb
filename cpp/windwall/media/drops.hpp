#pragma once
#include "windwall/media/stream.hpp"

/// How fast drops evaporate, how large they are and where they hit a wall. Handbook forms, SI.
namespace windwall::media {

/// Surface tension N/m and viscosity Pa s of a liquid near 25 degC; Mulero and Cachadina, Perry.
double surface_tension(Vapour liquid) noexcept;
double liquid_viscosity(Vapour liquid) noexcept;
/// Of a vapour in air at 298.15 K and 101 325 Pa, m2/s.
double vapour_diffusivity(Vapour liquid) noexcept;
/// Of all the liquid of a stream together, kg/m3; of water if there is none.
double liquid_density(const Stream& stream) noexcept;

/// A drop that evaporates in a gas at rest about it.
struct DropRate {
    double temperature{};           // K, of the drop: where heat and vapour balance
    double evaporation_constant{};  // K of d2 = d0^2 - K t, m2/s; 0 where nothing evaporates
};

/// The rate in a stream's gas of drops of the stream's own liquid, by mass shares: Spalding's film
/// with ln(1 + B_M) = Le ln(1 + B_T), properties by the rule of one third.
DropRate drop_rate(const Stream& stream) noexcept;

/// Share of a spray's mass that evaporates in `time` s from drops of `diameter` m, all alike.
double evaporated_share(double evaporation_constant, double time, double diameter) noexcept;

/// Sauter mean diameter of a pressure-swirl nozzle, m, after Lefebvre: 2.25 sigma^0.25 mu^0.25
/// m^0.25 dp^-0.5 rho^-0.25. Published forms differ by a factor of two: +-40 %. Not read there.
double sauter_diameter(double surface_tension, double viscosity, double flow,
                       double pressure_difference, double gas_density) noexcept;

/// rho d^2 V/(18 mu D): stopping distance of a drop over the bore of the pipe.
double stokes_number(double liquid_density, double drop_diameter, double velocity,
                     double gas_viscosity, double bore) noexcept;
/// Share of the drops that a bend of `angle` rad puts on its wall: 1 - 10^(-0.963 2 St
/// angle/90deg), Pui, Romay-Novas and Liu 1987 for turbulent flow, whose Stokes number counts the
/// radius.
double caught_in_bend(double stokes_number, double angle) noexcept;

/// Evaporates what a residence of `time` s allows, never more than equilibrium does; the share of
/// the way is r/(1 + r^4)^(1/4) with r the drops' rate over what equilibrium would evaporate.
Stream evaporate(const Stream& stream, double time) noexcept;

}  // namespace windwall::media
