#include "windwall/charge/filter.hpp"

#include "windwall/charge/pressure_loss.hpp"

#include <cmath>

namespace windwall::charge {

double filter_pressure_drop(double flow, double density, double drop, double at_flow,
                            double linear_share, double at_density) noexcept {
    const double relative = flow / at_flow;
    return drop * at_density / density *
           (linear_share * relative + (1 - linear_share) * relative * std::abs(relative));
}

media::Stream Filter::outlet(const media::Stream& in, const Surroundings&) const noexcept {
    media::Stream out = in;
    out.pressure = pressure_after(
        in.pressure,
        filter_pressure_drop(in.gas_flow(), in.density(), drop, at_flow, linear_share, at_density));
    return out;
}

std::span<const fields::Row> Filter::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("drop", "dp_0", at<&Filter::drop>, pressure_difference("kPa"), {0, 20},
                 "Pressure loss of filter and housing at the flow given by at_flow"),
        required("at_flow", "m_0", at<&Filter::at_flow>, mass_flow("g/s"), {1, 500},
                 "Air flow at which the pressure loss was measured"),
        with_default("at_density", "rho_0", at<&Filter::at_density>, density("kg/m3"), {0.6, 2},
                     0.03, "Density of the air at which the pressure loss was measured",
                     "derived: air at 20 degC and 101.3 kPa"),
        with_default(
            "linear_share", "a", at<&Filter::linear_share>, number(), {0, 1}, 0.25,
            "Share of the loss that grows with the flow itself; the rest grows with its square",
            "no source"),
    };
    return table;
}

}  // namespace windwall::charge
