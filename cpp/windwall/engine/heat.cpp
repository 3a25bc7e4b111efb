#include "windwall/engine/heat.hpp"

#include "windwall/engine/usual.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

// Of the heat to the walls at full power: between the wall laws named below, which give 0.10 to
// 0.16 of what is released at 5500 rpm, and a third for the port; estimate.
constexpr double chamber_part = 0.55;
// Slopes that the wall laws of Hohenberg, Woschni and Annand agree on to 0.06 in single-zone
// cycles.
constexpr double speed_exponent = -0.26;
constexpr double pressure_exponent = -0.16;
constexpr double least_speed_share = 0.1, least_pressure_share = 0.1;
// Nu = 0.07 Re^3/4 in ports and manifolds: Depcik and Assanis, SAE 2002-01-0372 (their abstract was
// read), from what others had measured.
constexpr double film_exponent = 0.75;
constexpr double least_flow_share = 1e-3;
constexpr double latest = 45;  // degrees

}  // namespace

double late_spark_wall_share(double retard) noexcept {
    const double late = std::clamp(retard / degree, 0.0, latest);
    return std::exp(late * (9e-5 * late - 0.0125));
}

double Walls::chamber_share(const WallState& state) const noexcept {
    const double slope =
        speed_exponent * std::log(std::max(state.speed_share, least_speed_share)) +
        pressure_exponent * std::log(std::max(state.pressure_share, least_pressure_share));
    return chamber_part * share * late_spark_wall_share(state.retard) * std::exp(slope);
}

/// ln(keeps) is that of a film's conductance over the heat capacity flow, and the film goes with
/// the flow by less than its first power: a small flow has longer to cool.
double Walls::behind_port(double behind_valve, double head_temperature,
                          double flow_share) const noexcept {
    const double small = std::pow(std::max(flow_share, least_flow_share), film_exponent - 1);
    return head_temperature + std::pow(port_keeps, small) * (behind_valve - head_temperature);
}

std::span<const fields::Row> Walls::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default(
            "share", "q_w", at<&Walls::share>, number(), {0, 0.6}, 0.05,
            "Share of the heat released that reaches head, barrel and exhaust port at full power",
            "published full-load balance (FEV) with 27.5 % of the fuel in coolant and oil, of "
            "which 3 % are "
            "friction, near a twentieth rich; 25 to 30 % for air-cooled engines"),
        with_default(
            "port_keeps", "e_p", at<&Walls::port_keeps>, number(), {0.3, 1}, 0.1,
            "Of the temperature of the exhaust above the head, what it keeps through the port at "
            "full power",
            "no source; a port then takes 5 to 8 % of the fuel's heat"),
    };
    return table;
}

}  // namespace windwall::engine
