#include "windwall/charge/bypass.hpp"

#include "windwall/media/orifice.hpp"
#include "windwall/numerics/smooth.hpp"

namespace windwall::charge {
namespace {

/// From 0 to 1 between the two ends, level at both.
double smooth_between(double x, double from, double to) {
    return numerics::smooth_step((x - from) / (to - from));
}

}  // namespace

double Bypass::opening(double manifold_pressure, const Surroundings& surroundings) const noexcept {
    switch (opened_by) {
        case OpenedBy::manifold_depression:
            return smooth_between(surroundings.ambient_pressure - manifold_pressure, opens_at,
                                  open_at);
        case OpenedBy::pedal:
            return 1 - smooth_between(surroundings.throttle_opening, 0, shut_from);
        case OpenedBy::hand: break;
    }
    return hand_opening;
}

double Bypass::branch_flow(const media::Stream& path, double inlet_pressure,
                           double manifold_pressure,
                           const Surroundings& surroundings) const noexcept {
    const double open = area * opening(manifold_pressure, surroundings);
    return media::orifice_flow(open, path.pressure, path.temperature, inlet_pressure, path.gas.R,
                               path.gas.gamma(path.temperature));
}

std::optional<fields::Violation> Bypass::check() const {
    if (opens_at < open_at) return std::nullopt;
    return fields::Violation{"open_at",
                             "the valve is fully open at a smaller depression than the "
                             "one it begins to open at"};
}

std::span<const fields::Row> Bypass::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("area", "CdA_b", at<&Bypass::area>, fields::area("mm2"), {1, 5000},
                 "Effective area of the valve, fully open"),
        choice("opened_by", at<&Bypass::opened_by>, "What opens the valve",
               "a diaphragm on the manifold is the usual one, common practice"),
        with_default(
            "opens_at", "dp_1", at<&Bypass::opens_at>, pressure_difference("kPa"), {0, 90}, 5,
            "Depression in the manifold, behind the last part of the path, at which it begins to "
            "open",
            "no source"),
        with_default("open_at", "dp_2", at<&Bypass::open_at>, pressure_difference("kPa"), {0.5, 95},
                     8, "Depression in the manifold at which it is fully open", "no source"),
        with_default("shut_from", "o_s", at<&Bypass::shut_from>, percent(), {1, 100}, 5,
                     "Travel of the pedal from which it is shut, where the pedal works it",
                     "common practice"),
        with_default("hand_opening", "o_h", at<&Bypass::hand_opening>, percent(), {0, 100}, 0,
                     "How far it is open, where it is set by hand", "shut, chosen by the project"),
    };
    return table;
}

}  // namespace windwall::charge
