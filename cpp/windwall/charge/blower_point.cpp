#include "windwall/charge/blower_point.hpp"

#include "windwall/charge/blower_case.hpp"
#include "windwall/media/orifice.hpp"

#include <cmath>
#include <limits>

namespace windwall::charge {
namespace {

media::Stream delivering(media::Stream inlet, double gas_flow) {
    inlet.dry_air = gas_flow / (1 + inlet.vapour_share());
    return inlet;
}

/// d(capacity)/d(flow): more flow means a cooler, smaller leak.
double capacity_slope(const PositiveBlower& blower, const Compression& at, const media::Stream& in,
                      const Surroundings& surroundings) {
    const double flow = in.gas_flow();
    if (at.leak_flow <= 0) return 0;
    const double lost =
        BlowerCase(blower, in, at.rotor_speed, at.bearing_loss, surroundings).conductance();
    const double carried = flow * in.gas.heat_capacity(at.outlet.temperature) + lost / 2;
    const double cooling = at.heat_to_charge / (flow * carried);
    return at.leak_flow / (2 * in.temperature) * cooling;
}

BlowerPoint unsolved(BlowerBalance balance) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    Compression nothing{none, none, none, none, none, none, none, none, none, none, none, none, {}};
    nothing.outlet.temperature = none;
    nothing.capped = true;
    return {balance, none, nothing, none, none, none};
}

/// Even gas as cold as the inlet would leak faster than the rotors take it in.
bool overwhelmed(const PositiveBlower& blower, const media::Stream& inlet, double outlet_pressure,
                 double swept) {
    const double T = inlet.temperature;
    return swept <= media::orifice_flow(blower.leak_area, outlet_pressure, T, inlet.pressure,
                                        inlet.gas.R, inlet.gas.gamma(T));
}

BlowerPoint solved(const PositiveBlower& blower, const media::Stream& in, double outlet_pressure,
                   const Compression& at) {
    const double cp = in.gas.heat_capacity(in.temperature);
    const double rise =
        in.temperature * std::expm1(in.gas.R / cp * std::log(outlet_pressure / in.pressure));
    const double volume = at.rotor_speed * blower.displacement / (2 * std::numbers::pi);
    BlowerPoint point{BlowerBalance::solved, in.gas_flow(), at, 0, 0, 0};
    point.volumetric_efficiency = in.gas_flow() / (in.density() * volume);
    point.shaft_efficiency = in.gas_flow() * cp * rise / at.shaft_power;
    point.temperature_efficiency = rise / (at.outlet.temperature - in.temperature);
    return point;
}

}  // namespace

BlowerPoint blower_point(const PositiveBlower& blower, const media::Stream& inlet,
                         double outlet_pressure, double rotor_speed) noexcept {
    Surroundings surroundings;
    surroundings.drive_speed = rotor_speed / blower.drive_ratio;
    surroundings.under_hood_temperature = inlet.temperature;
    // Shortfall (capacity less flow) is concave in the flow: from above, Newton comes down to the
    // larger solution without ever passing it, and passes the equilibrium only if there is none.
    double flow = blower.swept_flow(inlet, rotor_speed);
    if (overwhelmed(blower, inlet, outlet_pressure, flow))
        return unsolved(BlowerBalance::overwhelmed);
    for (int step = 0; step < 100 && flow > 0; ++step) {
        const media::Stream in = delivering(inlet, flow);
        const Compression at = blower.compress(in, outlet_pressure, surroundings);
        const double slope = capacity_slope(blower, at, in, surroundings) - 1;
        const bool cooked = at.capped && at.outlet.temperature > in.temperature;
        if (cooked || slope >= 0) break;
        const double change = (at.capacity - flow) / slope;
        if (std::abs(change) <= 1e-13 * flow) return solved(blower, in, outlet_pressure, at);
        flow -= change;
    }
    return unsolved(BlowerBalance::runaway);
}

}  // namespace windwall::charge
