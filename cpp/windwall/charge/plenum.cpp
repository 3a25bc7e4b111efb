#include "windwall/charge/plenum.hpp"

#include "windwall/charge/wall_heat.hpp"
#include "windwall/media/drops.hpp"

#include <cmath>

namespace windwall::charge {
namespace {

// W/(m2 K), slow gas that enters as a jet; no source: 30 is low among the 25 to 250 of Cengel's
// table for gases that are moved.
constexpr double inside_film = 30;

}  // namespace

double Plenum::surface() const noexcept {
    const double edge = std::cbrt(volume);
    return 6 * edge * edge;
}

double Plenum::wall_conductance(double outside_film) const noexcept {
    if (conductance) return *conductance;
    return surface() / (1 / inside_film + 1 / outside_film);
}

media::Stream Plenum::outlet(const media::Stream& in,
                             const Surroundings& surroundings) const noexcept {
    media::Stream out = through_the_wall(in, wall_conductance(surroundings.outside_film),
                                         surroundings.under_hood_temperature);
    if (!(in.liquid_share() > 0)) return out;
    const double flow = std::abs(in.gas_flow());
    return flow > 0 ? media::evaporate(out, volume * out.density() / flow) : out;
}

std::array<media::LumpedNode, 1> Plenum::thermal_nodes(
    const media::Stream& in, double, const Surroundings& surroundings) const noexcept {
    const double outside = surroundings.outside_film;
    return {wall_node(in, wall_conductance(outside), {inside_film, outside},
                      wall_heat_capacity(surface(), wall_thickness),
                      surroundings.under_hood_temperature)};
}

std::span<const fields::Row> Plenum::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("volume", "V", at<&Plenum::volume>, fields::volume("L"), {0.05, 200},
                 "Volume between the last part of the path and the intake valves"),
        optional(
            "conductance", "UA", at<&Plenum::conductance>, fields::conductance("W/K"), {0, 500},
            "Between the charge and the air under the bodywork; when not given, from the surface "
            "of a cube of this volume"),
        with_default("wall_thickness", "t_w", at<&Plenum::wall_thickness>, fields::length("mm"),
                     {0.1, 20}, 1.5,
                     "Thickness of the wall, which has to warm up, as one of aluminium",
                     "a cast or welded box; estimate"),
    };
    return table;
}

}  // namespace windwall::charge
