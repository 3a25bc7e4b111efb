#include "windwall/charge/plenum.hpp"

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

Wall Plenum::wall(double outside_film) const noexcept {
    return {wall_conductance(outside_film),
            {inside_film, outside_film},
            wall_heat_capacity(surface(), wall_thickness)};
}

media::Stream Plenum::outlet(const media::Stream& in,
                             const Surroundings& surroundings) const noexcept {
    media::Stream out = wall(surroundings.outside_film).outlet(in, surroundings);
    if (!(in.liquid_share() > 0)) return out;
    const double flow = std::abs(in.gas_flow());
    return flow > 0 ? media::evaporate(out, volume * out.density() / flow) : out;
}

std::array<media::LumpedNode, 1> Plenum::thermal_nodes(
    const media::Stream& in, double, const Surroundings& surroundings) const noexcept {
    return {wall(surroundings.outside_film).node(in, surroundings)};
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
