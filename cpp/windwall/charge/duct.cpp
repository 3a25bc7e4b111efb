#include "windwall/charge/duct.hpp"

#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/media/drops.hpp"
#include "windwall/media/liquids.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::charge {

namespace {

/// What the bends throw on the wall becomes film, then the drops that are left evaporate.
media::Stream with_drops(const Duct& duct, media::Stream charge, double viscosity) {
    const double area = std::numbers::pi / 4 * duct.bore * duct.bore;
    const double velocity = std::abs(charge.gas_flow()) / (charge.density() * area);
    if (!(velocity > 0)) return charge;
    const double stokes = media::stokes_number(media::liquid_density(charge), charge.drop_diameter,
                                               velocity, viscosity, duct.bore);
    const double missed = 1 - media::caught_in_bend(stokes, duct.bend_angle);
    charge.film_share = 1 - (1 - charge.film_share) * missed;
    return media::evaporate(charge, duct.length / velocity);
}

}  // namespace

double Duct::surface() const noexcept { return std::numbers::pi * bore * length; }

double Duct::wall_conductance(const media::Stream& in, double outside_film) const noexcept {
    if (conductance) return *conductance;
    return pipe_conductance(in.gas_flow(), air_viscosity(in.temperature), bore, length,
                            outside_film);
}

Wall Duct::wall(const media::Stream& in, double outside_film) const noexcept {
    return {wall_conductance(in, outside_film),
            {pipe_film(in.gas_flow(), air_viscosity(in.temperature), bore), outside_film},
            wall_heat_capacity(surface(), wall_thickness)};
}

media::Stream Duct::outlet(const media::Stream& in,
                           const Surroundings& surroundings) const noexcept {
    const double viscosity = air_viscosity(in.temperature);
    const double loss = duct_pressure_drop(in.gas_flow(), in.density(), viscosity, length, bore,
                                           loss_coefficient, roughness);
    media::Stream out = wall(in, surroundings.outside_film).outlet(in, surroundings);
    if (in.liquid_share() > 0) out = with_drops(*this, out, viscosity);
    out.pressure = pressure_after(in.pressure, loss);
    return out;
}

std::array<media::LumpedNode, 1> Duct::thermal_nodes(
    const media::Stream& in, double, const Surroundings& surroundings) const noexcept {
    return {wall(in, surroundings.outside_film).node(in, surroundings)};
}

std::span<const fields::Row> Duct::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("length", "L", at<&Duct::length>, fields::length("mm"), {0, 10000},
                 "Length along the middle of the pipe"),
        required("bore", "D", at<&Duct::bore>, fields::length("mm"), {8, 200},
                 "Inside diameter of the pipe"),
        with_default("loss_coefficient", "K", at<&Duct::loss_coefficient>, number(), {0, 20}, 0.2,
                     "Loss coefficients of all bends and steps together, on the pipe's velocity",
                     "one bend of 90 degrees with a radius of 1.0 to 1.5 bores: 0.25 to 0.36 after "
                     "Rennels and Miller"),
        with_default("roughness", "eps", at<&Duct::roughness>, fields::length("mm"), {0, 3}, 0.02,
                     "Height of the wall's roughness",
                     "0.006 to 0.07 mm for smooth rubber tubing, table of Neutrium; 0.03 mm for "
                     "rubber, table of UCT Prague"),
        with_default("bend_angle", "theta", at<&Duct::bend_angle>, angle("deg"), {0, 1080}, 45,
                     "Angle of all bends together, on whose walls drops land",
                     "one bend, chosen by the project"),
        optional(
            "conductance", "UA", at<&Duct::conductance>, fields::conductance("W/K"), {0, 200},
            "Between the charge and the air under the bodywork; when not given, from the pipe's "
            "surface"),
        with_default("wall_thickness", "t_w", at<&Duct::wall_thickness>, fields::length("mm"),
                     {0.1, 20}, 1,
                     "Thickness of the wall, which has to warm up, as one of aluminium",
                     "1.3 mm of steel take as much, and 3 mm of rubber more; estimate"),
    };
    return table;
}

}  // namespace windwall::charge
