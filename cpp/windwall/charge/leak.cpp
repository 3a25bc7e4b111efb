#include "windwall/charge/leak.hpp"

#include "windwall/charge/pressure_loss.hpp"
#include "windwall/media/orifice.hpp"
#include "windwall/media/stream_enthalpy.hpp"

namespace windwall::charge {
namespace {

/// One kilogram a second of the air under the bodywork.
media::Stream weather(const Surroundings& surroundings) {
    return media::ambient_stream(surroundings.ambient_pressure, surroundings.under_hood_temperature,
                                 surroundings.humidity_ratio, 1);
}

double jet(double effective_area, const media::Stream& from, double to_pressure) {
    return media::orifice_flow(effective_area, from.pressure, from.temperature, to_pressure,
                               from.gas.R, from.gas.gamma(from.temperature));
}

}  // namespace

double Leak::lost(const media::Stream& in, const Surroundings& surroundings) const noexcept {
    const double open = discharge_coefficient * area;
    if (in.pressure >= surroundings.ambient_pressure)
        return jet(open, in, surroundings.ambient_pressure);
    return -jet(open, weather(surroundings), in.pressure);
}

media::Stream Leak::outlet(const media::Stream& in,
                           const Surroundings& surroundings) const noexcept {
    if (!(in.dry_air > 0)) return in;
    const double away = lost(in, surroundings);
    if (away >= 0) {
        media::Stream rest = in;
        rest.dry_air *= share_left(away / in.gas_flow());
        return rest;
    }
    media::Stream drawn = weather(surroundings);
    drawn.pressure = in.pressure;
    return media::mixed(in, drawn, -away / (1 + drawn.vapour_share()) / in.dry_air);
}

std::span<const fields::Row> Leak::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("area", "A_h", at<&Leak::area>, fields::area("mm2"), {0, 5000},
                 "Area of the hole; a hose of 40 mm off is 1257 mm2"),
        with_default("discharge_coefficient", "C_d", at<&Leak::discharge_coefficient>, number(),
                     {0.4, 1}, 0.08, "Area of the jet over that of the hole",
                     "0.60 to 0.61 for a sharp-edged orifice (ISO 5167-2), up to 0.84 where it is "
                     "choked; between the two"),
    };
    return table;
}

}  // namespace windwall::charge
