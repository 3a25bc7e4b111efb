#include "windwall/engine/exhaust_gas.hpp"

#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

// Heat capacity of the products of a rich petrol flame, J/(kg K), as a straight line over the
// temperature in K: their enthalpy to 1500 K within 0.4 % at an equivalence ratio of 1.15, and
// within 2 % from 1.0 to 1.25 (Cantera, water gas frozen at 1740 K).
constexpr double at_nothing = 1013, per_kelvin = 0.2755;

double enthalpy(double temperature) noexcept {
    return temperature * (at_nothing + per_kelvin / 2 * temperature);
}

double temperature_of(double enthalpy) noexcept {
    const double root = at_nothing * at_nothing + 2 * per_kelvin * enthalpy;
    return (std::sqrt(std::max(root, 0.0)) - at_nothing) / per_kelvin;
}

/// W above the air that came in, without what liquids put in on the way brought along.
double charge_heat(const Intake& intake) noexcept {
    const media::Stream& charge = intake.charge;
    return charge.dry_air *
           (media::enthalpy_per_dry_air(charge) - charge.fed - intake.inlet_enthalpy);
}

}  // namespace

ExhaustGas exhaust_gas(const Intake& intake, const Work& work, const Walls& walls,
                       double head_temperature, const Outflow& out) noexcept {
    const media::Stream& charge = intake.charge;
    ExhaustGas gas;
    gas.flow = charge.gas_flow() + charge.liquid_share() * charge.dry_air + work.fuel_flow;
    const double expanded =
        work.released + charge_heat(intake) + work.pumping - work.indicated - work.chamber_heat;
    const double hottest =
        temperature_of(expanded / gas.flow + enthalpy(intake.ambient_temperature));
    gas.temperature = walls.behind_port(hottest, head_temperature, out);
    gas.port_heat = gas.flow * (enthalpy(hottest) - enthalpy(gas.temperature));
    gas.heat = expanded - gas.port_heat;
    return gas;
}

Heat heat(const Work& work, const ExhaustGas& gas) noexcept {
    return {work.chamber_heat + gas.port_heat, work.fuel_power - work.released};
}

}  // namespace windwall::engine
