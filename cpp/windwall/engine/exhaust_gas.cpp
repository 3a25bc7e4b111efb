#include "windwall/engine/exhaust_gas.hpp"

#include "windwall/media/stream_enthalpy.hpp"

namespace windwall::engine {
namespace {

// Mean heat capacity of the products of a rich petrol flame from 25 to 900 degC, J/(kg K). From
// memory, to be confirmed; it moves the exhaust temperature only, never a watt.
constexpr double exhaust_heat_capacity = 1230;

/// W above the air that came in, without what liquids put in on the way brought along.
double charge_heat(const Intake& intake) noexcept {
    const media::Stream& charge = intake.charge;
    return charge.dry_air *
           (media::enthalpy_per_dry_air(charge) - charge.fed - intake.inlet_enthalpy);
}

}  // namespace

ExhaustGas exhaust_gas(const Intake& intake, const Work& work, const Walls& walls,
                       double head_temperature) noexcept {
    const media::Stream& charge = intake.charge;
    ExhaustGas gas;
    gas.flow = charge.gas_flow() + charge.liquid_share() * charge.dry_air + work.fuel_flow;
    const double capacity = gas.flow * exhaust_heat_capacity;
    const double behind_valve =
        work.released + charge_heat(intake) + work.pumping - work.indicated - work.chamber_heat;
    const double hottest = intake.ambient_temperature + behind_valve / capacity;
    gas.temperature = walls.behind_port(hottest, head_temperature);
    gas.port_heat = capacity * (hottest - gas.temperature);
    gas.heat = behind_valve - gas.port_heat;
    return gas;
}

}  // namespace windwall::engine
