#include "windwall/charge/throttle.hpp"

#include "windwall/charge/throttle_area.hpp"
#include "windwall/fields/lookup.hpp"
#include "windwall/media/orifice.hpp"
#include "windwall/numerics/smooth.hpp"

#include <algorithm>

namespace windwall::charge {
namespace {

constexpr double pi = std::numbers::pi;
// From here on the jet begins to fill the pipe again instead of meeting the plate's wake.
constexpr double recovery_begins = 0.5;
// A short, clean body wide open keeps a loss coefficient of (1/0.9 - 1)^2 = 0.012.
constexpr double fullest_jet = 0.9;

}  // namespace

double recovering_flow(double jet_area, double recovered, double upstream_pressure,
                       double upstream_temperature, double downstream_pressure, double R,
                       double gamma) noexcept {
    if (downstream_pressure > upstream_pressure)
        return -recovering_flow(jet_area, recovered, downstream_pressure, upstream_temperature,
                                upstream_pressure, R, gamma);
    const double left = (1 - recovered) * (1 - recovered);
    // May fall below zero, where the jet is choked long since.
    const double throat = upstream_pressure - (upstream_pressure - downstream_pressure) / left;
    return media::orifice_flow(jet_area, upstream_pressure, upstream_temperature, throat, R, gamma);
}

double Throttle::plate(double pedal) const noexcept {
    return linkage.empty() ? pedal : fields::looked_up(linkage, pedal);
}

double Throttle::jet_area(double opening) const noexcept {
    const double travel = std::clamp(opening, 0.0, 1.0);
    const double angle = closed_angle + travel * (pi / 2 - closed_angle);
    return discharge_coefficient * throttle_area(bore, shaft, angle, closed_angle);
}

double Throttle::recovering_share(double opening, double jet) const noexcept {
    const double filled = jet / (pi / 4 * bore * bore);
    const double step = numerics::smooth_step((opening - recovery_begins) / (1 - recovery_begins));
    return step * std::min(filled, fullest_jet);
}

double Throttle::flow(const media::Stream& in, double outlet_pressure,
                      const Surroundings& surroundings) const noexcept {
    const double open = opening(surroundings);
    const double jet = jet_area(open);
    const double R = in.gas.R;
    const double gamma = in.gas.gamma(in.temperature);
    return recovering_flow(jet, recovering_share(open, jet), in.pressure, in.temperature,
                           outlet_pressure, R, gamma) +
           media::orifice_flow(leak_area, in.pressure, in.temperature, outlet_pressure, R, gamma);
}

std::optional<fields::Violation> Throttle::check() const {
    if (shaft >= bore)
        return fields::Violation{"shaft", "the shaft is as thick as the bore; nothing could flow"};
    if (linkage.empty()) return std::nullopt;
    if (fields::rises(linkage) && std::ranges::is_sorted(linkage.column[1])) return std::nullopt;
    return fields::Violation{"linkage",
                             "the pedal must go further from row to row, and the plate "
                             "may not go back"};
}

std::span<const fields::Row> Throttle::rows() {
    using namespace fields;
    static constexpr Column travels[] = {
        {"pedal_travel", percent(), {0, 100}, "Share of the pedal's travel"},
        {"plate_travel", percent(), {0, 100}, "Share of the plate's travel"},
    };
    static constexpr Row table[] = {
        required("bore", "D", at<&Throttle::bore>, length("mm"), {8, 150},
                 "Bore of the throttle body"),
        with_default("shaft", "d", at<&Throttle::shaft>, length("mm"), {0, 20}, 1,
                     "Diameter of the shaft across the bore", "common practice"),
        with_default("closed_angle", "psi_0", at<&Throttle::closed_angle>, angle("deg"), {0, 30}, 2,
                     "Angle at which the plate touches the wall, from the plane across the bore",
                     "common practice"),
        with_default("discharge_coefficient", "C_d", at<&Throttle::discharge_coefficient>, number(),
                     {0.5, 1}, 0.08, "Area of the jet over the open area",
                     "no source; between 0.61 of a sharp edge (ISO 5167-2) and 0.98 of a venturi"),
        with_default("leak_area", "A_l", at<&Throttle::leak_area>, area("mm2"), {0, 50}, 2,
                     "Effective area left open with the plate shut", "no source"),
        fields::table("linkage", at<&Throttle::linkage>, travels,
                      "How the plate follows the pedal, where two plates are linked or a cam lies "
                      "between; without it they go together"),
    };
    return table;
}

}  // namespace windwall::charge
