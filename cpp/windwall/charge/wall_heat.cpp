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

media::LumpedNode wall_node(const media::Stream& in, double conductance, const WallFilms& films,
                            double heat_capacity, double outside_temperature) noexcept {
    if (!(conductance > 0)) return {"wall", heat_capacity};
    const double heat =
        media::heat_given_off(in, through_the_wall(in, conductance, outside_temperature));
    const double both = films.inside + films.outside;
    return {"wall",
            heat_capacity,
            0,
            conductance * both / films.outside,
            outside_temperature + heat / conductance,
            conductance * both / films.inside,
            outside_temperature};
}

}  // namespace windwall::charge
