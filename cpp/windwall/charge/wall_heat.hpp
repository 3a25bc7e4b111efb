#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/media/stream.hpp"
#include "windwall/media/thermal_node.hpp"

namespace windwall::charge {

/// Conductance, W/K, of a pipe between the charge and the air around it: Dittus and Boelter inside,
/// `outside` W/(m2 K) outside, the wall's own resistance neglected.
double pipe_conductance(double flow, double viscosity, double bore, double length,
                        double outside) noexcept;

/// Film of the charge on the wall of a pipe, Dittus and Boelter, W/(m2 K).
double pipe_film(double flow, double viscosity, double bore) noexcept;

/// From warm walls of a hand's breadth to air that passes them at a speed in m/s, W/(m2 K): the
/// laminar layer of a flat plate, after Pohlhausen, beside what radiates and rises by itself.
double outside_film(double air_speed) noexcept;

/// The charge after giving heat through a wall of this conductance to air at a temperature in K:
/// the difference falls by exp(-UA/(m cp)). Nothing evaporates or condenses there.
media::Stream through_the_wall(const media::Stream& in, double conductance,
                               double outside_temperature) noexcept;

/// Films on the two sides of a wall, W/(m2 K): they share the resistance of its conductance.
struct WallFilms {
    double inside{};
    double outside{};
};

/// Heat capacity, J/K, of a wall of aluminium: area m2, thickness m.
double wall_heat_capacity(double area, double thickness) noexcept;

/// W/K from a stream of this heat capacity flow, W/K, to a wall of one temperature behind a film of
/// a conductance in W/K, for each kelvin between the wall and the stream as it enters.
double stream_to_wall(double capacity_flow, double film) noexcept;

/// A wall of one temperature between the charge and the air under the bodywork.
struct Wall {
    double conductance{};  // W/K, of both films in series
    WallFilms films;
    double heat_capacity{};  // J/K

    /// The charge behind it: at rest as through_the_wall; from a wall that is held, W more or less
    /// by what its inside film passes for each kelvin that it is away from rest.
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    media::LumpedNode node(const media::Stream& in,
                           const Surroundings& surroundings) const noexcept;

private:
    double rest(double heat, const Surroundings& surroundings) const noexcept;
    double inside(const media::Stream& in) const noexcept;  // W/K
    double outside() const noexcept;                        // W/K
};

}  // namespace windwall::charge
