#include "windwall/engine/heat.hpp"

#include "windwall/engine/geometry.hpp"
#include "windwall/engine/usual.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

// Of the heat to the walls at full power: between the wall laws named below, which give 0.10 to
// 0.16 of what is released at 5500 rpm, and a third for the port; estimate.
constexpr double chamber_part = 0.55;
// Means of the wall laws of Hohenberg, Woschni and Annand in cycles of four strokes, 25 to 150 kPa
// and 1000 to 5500 rpm, what stays behind slowing the next burn: -0.25 to -0.44, -0.21 to -0.30.
constexpr double speed_exponent = -0.32;
constexpr double pressure_exponent = -0.245;
// What the same laws have the gas lose while the piston pushes it out, over what the chamber takes
// at full power: 0.12 to 0.20.
constexpr double stroke_over_chamber = 0.165;
constexpr double stroke_speed_exponent = -0.32, filling_exponent = -1.1;
constexpr double least_speed_share = 0.1, least_pressure_share = 0.1;
// Nu = 0.07 Re^3/4 in ports and manifolds: Depcik and Assanis, SAE 2002-01-0372 (their abstract was
// read), from what others had measured.
constexpr double film_exponent = 0.75;
constexpr double least_flow_share = 1e-3;
constexpr double latest = 45;  // degrees

/// Conductance to the cylinder's walls over the heat capacity of what is pushed out at full power.
double stroke_loss_at_full_power(double walls, const Outflow& out) noexcept {
    const double held = usual_air_density * swept_flow(out.swept_volume, out.full_speed);
    return stroke_over_chamber * chamber_part * walls *
           std::pow(out.full_flow / held, filling_exponent);
}

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

/// Both lose by a film's conductance over the heat capacity flow. In the cylinder gas at the
/// pressure behind the valves fills the same volume however little the charge was, so that a small
/// charge loses most of it there; in the port the film goes with the flow by less than its first
/// power.
double Walls::behind_port(double expanded, double head_temperature,
                          const Outflow& out) const noexcept {
    const double flow = std::log(std::max(out.flow / out.full_flow, least_flow_share));
    const double speed = std::log(std::max(out.engine_speed / out.full_speed, least_speed_share));
    const double full = stroke_loss_at_full_power(share, out);
    const double stroke =
        full * std::exp(stroke_speed_exponent * speed + filling_exponent * (flow - speed));
    const double port =
        std::max(0.0, -std::log(port_keeps) - full) * std::exp((film_exponent - 1) * flow);
    return head_temperature + std::exp(-stroke - port) * (expanded - head_temperature);
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
            "Of the temperature of the exhaust above the head, what it keeps on its way out of "
            "cylinder and port at full power",
            "no source; they then take 5 to 8 % of the fuel's heat"),
    };
    return table;
}

}  // namespace windwall::engine
