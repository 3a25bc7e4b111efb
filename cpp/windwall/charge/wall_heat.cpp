#include "windwall/charge/wall_heat.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double prandtl = 0.71;
constexpr double conductivity_by_viscosity = 1006 / prandtl;  // k = mu cp/Pr, J/(kg K)
constexpr double laminar = 3.66;                              // Nusselt number, uniform wall
constexpr double least_capacity = 1e-9;                       // W/K

// A plate of 0.1 m in air of 330 K, 0.664 k Pr^(1/3) sqrt(u/(nu L)), at 1 m/s.
constexpr double plate = 11.9;  // W/(m2 K)
// Dull aluminium radiates 2 to 5, and air rises along 0.1 m with 3 to 6 where none is blown at it.
constexpr double still = 5;  // W/(m2 K); estimate

}  // namespace

double outside_film(double air_speed) noexcept {
    return still + plate * std::sqrt(std::max(air_speed, 0.0));
}

double pipe_film(double flow, double viscosity, double bore) noexcept {
    const double reynolds = 4 * std::abs(flow) / (std::numbers::pi * bore * viscosity);
    const double nusselt = laminar + 0.023 * std::pow(reynolds, 0.8) * std::pow(prandtl, 0.4);
    return nusselt * viscosity * conductivity_by_viscosity / bore;
}

double pipe_conductance(double flow, double viscosity, double bore, double length,
                        double outside) noexcept {
    const double resistance = 1 / pipe_film(flow, viscosity, bore) + 1 / outside;
    return std::numbers::pi * bore * length / resistance;
}

media::Stream through_the_wall(const media::Stream& in, double conductance,
                               double outside_temperature) noexcept {
    if (!(conductance > 0)) return in;
    const double capacity = std::abs(in.dry_air) * media::capacity_per_dry_air(in);
    const double left = std::exp(-conductance / std::max(capacity, least_capacity));
    media::Stream out = in;
    out.temperature = outside_temperature + left * (in.temperature - outside_temperature);
    return out;
}

double wall_heat_capacity(double area, double thickness) noexcept {
    return area * thickness * media::constants::aluminium_density *
           media::constants::aluminium_heat_capacity;
}

double stream_to_wall(double capacity_flow, double film) noexcept {
    const double capacity = std::max(capacity_flow, least_capacity);
    return capacity * -std::expm1(-film / capacity);
}

double Wall::inside(const media::Stream& in) const noexcept {
    const double film = conductance * (films.inside + films.outside) / films.outside;
    return stream_to_wall(std::abs(in.dry_air) * media::capacity_per_dry_air(in), film);
}

double Wall::outside() const noexcept {
    return conductance * (films.inside + films.outside) / films.inside;
}

/// K, where the heat in W that goes through leaves the outside film.
double Wall::rest(double heat, const Surroundings& surroundings) const noexcept {
    return surroundings.under_hood_temperature + heat / outside();
}

media::Stream Wall::outlet(const media::Stream& in,
                           const Surroundings& surroundings) const noexcept {
    media::Stream out = through_the_wall(in, conductance, surroundings.under_hood_temperature);
    if (!surroundings.held.metal || !(conductance > 0)) return out;
    const double warmer =
        *surroundings.held.metal - rest(media::heat_given_off(in, out), surroundings);
    const double capacity = std::abs(in.dry_air) * media::capacity_per_dry_air(in);
    out.temperature += inside(in) * warmer / std::max(capacity, least_capacity);
    return out;
}

media::LumpedNode Wall::node(const media::Stream& in,
                             const Surroundings& surroundings) const noexcept {
    if (!(conductance > 0)) return {"wall", heat_capacity};
    const double air = surroundings.under_hood_temperature;
    const double heat = media::heat_given_off(in, through_the_wall(in, conductance, air));
    return {"wall", heat_capacity, heat, inside(in), rest(heat, surroundings), outside(), air};
}

}  // namespace windwall::charge
