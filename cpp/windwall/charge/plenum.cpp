#include "windwall/charge/plenum.hpp"

#include "windwall/charge/wall_heat.hpp"
#include "windwall/media/drops.hpp"

#include <cmath>

namespace windwall::charge {
namespace {

// W/(m2 K): the slow gas inside and the air outside in series. From memory, to be confirmed.
constexpr double wall_coefficient = 10;

}  // namespace

double Plenum::wall_conductance() const noexcept {
    if (conductance) return *conductance;
    const double edge = std::cbrt(volume);
    return wall_coefficient * 6 * edge * edge;
}

media::Stream Plenum::outlet(const media::Stream& in,
                             const Surroundings& surroundings) const noexcept {
    media::Stream out =
        through_the_wall(in, wall_conductance(), surroundings.under_hood_temperature);
    if (!(in.liquid_share() > 0)) return out;
    const double flow = std::abs(in.gas_flow());
    return flow > 0 ? media::evaporate(out, volume * out.density() / flow) : out;
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
    };
    return table;
}

}  // namespace windwall::charge
