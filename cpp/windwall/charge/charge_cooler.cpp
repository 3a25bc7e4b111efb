#include "windwall/charge/charge_cooler.hpp"

#include "windwall/charge/crossflow.hpp"
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/charge/wall_heat.hpp"
#include "windwall/media/constants.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::charge {
namespace {

constexpr double thinnest_film = 1e-3;  // of the resistance; the core is never wholly on one side

// m/s ahead of a core that nothing blows through: sqrt(2 g h dT/T) is 0.9 for 0.2 m of air that is
// 60 K warmer, of which the core's fins leave a third; estimate.
constexpr double rising_air = 0.3;

/// kg/s; warm air rises through a core that the road's air can reach.
double cooling_air(const ChargeCooler& cooler, const Surroundings& surroundings) {
    if (!(cooler.installed_share > 0)) return 0;
    return surroundings.air_density * cooler.face_area *
           std::max(cooler.installed_share * surroundings.road_speed, rising_air);
}

/// Effectiveness and the charge's own share of the way, from the two heat capacity flows.
void share_of_the_way(HeatExchange& found, double charge, double cooling) {
    const double least = std::min(charge, cooling);
    found.effectiveness =
        crossflow_effectiveness(found.conductance / least, least / std::max(charge, cooling));
    found.charge_share = found.effectiveness * least / charge;
}

double flow_loss(const ChargeCooler& cooler, const media::Stream& in, double outlet_temperature) {
    const double flow = in.gas_flow();
    const double mean = (in.temperature + outlet_temperature) / 2;
    const double density = in.pressure / (in.gas.R * mean);
    const double size = std::pow(std::abs(flow) / cooler.at_charge_flow, cooler.drop_exponent);
    return std::copysign(cooler.drop * size * cooler.at_density / density, flow);
}

/// Liquid comes in, or would form at the temperature of the cooling air.
bool is_wet(const media::Stream& in, double cooling_temperature) {
    if (in.liquid_share() > 0) return true;
    media::Stream coldest = in;
    coldest.temperature = std::min(in.temperature, cooling_temperature);
    return !media::is_dry(coldest);
}

/// The charge in equilibrium at the temperature of the cooling air: as far as it could go.
media::Stream fully_cooled(const media::Stream& in, double cooling_temperature) {
    media::Stream cold = in;
    cold.temperature = cooling_temperature;
    return media::equilibrium_at_temperature(cold);
}

/// As the dry exchange, with the enthalpy of gas and liquid for that of the gas: condensing adds to
/// what a kelvin of the charge is worth, and the fins catch every drop.
media::Stream wet_outlet(HeatExchange& found, const media::Stream& in, double flow) {
    const double before = media::enthalpy_per_dry_air(in);
    const media::Stream warm = media::adiabatic_equilibrium(in);
    const media::Stream cold = fully_cooled(in, found.cooling_temperature);
    const double drop = before - media::enthalpy_per_dry_air(cold);
    const double way = warm.temperature - found.cooling_temperature;
    const double usual = media::capacity_per_dry_air(in);
    const double capacity = std::abs(way) > 1e-6 ? std::max(drop / way, usual / 2) : usual;
    share_of_the_way(
        found, flow * capacity,
        found.cooling_flow * media::dry_air().heat_capacity(found.cooling_temperature));
    const double given = found.charge_share * drop;
    media::Stream out = media::equilibrium_at_enthalpy(in, before - given);
    out.film_share = out.liquid_share() > 0 ? 1 : 0;
    out.drop_diameter = 0;
    found.heat = flow * given;
    found.condensed = media::condensed(in, out);
    found.outlet_temperature = out.temperature;
    return out;
}

/// Shares of enthalpy, not of temperature: the charge can never pass the air that cools it.
media::Stream dry_outlet(HeatExchange& found, const media::Stream& in, double flow) {
    const double mean = (in.temperature + found.cooling_temperature) / 2;
    share_of_the_way(found, flow * in.gas.heat_capacity(mean),
                     found.cooling_flow * media::dry_air().heat_capacity(mean));
    const double before = in.gas.enthalpy(in.temperature);
    const double given = found.charge_share * (before - in.gas.enthalpy(found.cooling_temperature));
    const double guess =
        in.temperature + found.charge_share * (found.cooling_temperature - in.temperature);
    media::Stream out = in;
    out.temperature = found.outlet_temperature = in.gas.temperature(before - given, guess);
    found.heat = flow * given;
    return out;
}

}  // namespace

media::Stream ChargeCooler::rested(const media::Stream& in, const Surroundings& surroundings,
                                   HeatExchange& found) const noexcept {
    found.cooling_flow = cooling_air(*this, surroundings);
    found.cooling_temperature = surroundings.ambient_temperature + under_hood_rise;
    found.outlet_temperature = in.temperature;
    const double flow = std::abs(in.gas_flow());
    found.conductance =
        cooler_conductance(flow, found.cooling_flow, conductance, at_charge_flow, at_cooling_flow,
                           hot_side_share, charge_exponent, cooling_exponent);
    if (!(found.conductance > 0)) return in;
    return is_wet(in, found.cooling_temperature) ? wet_outlet(found, in, std::abs(in.dry_air))
                                                 : dry_outlet(found, in, flow);
}

/// A core of one temperature: at rest it passes on what the exchange takes from the charge, and
/// each kelvin beside that moves what its two sides lead to it.
ChargeCooler::Core ChargeCooler::core(const media::Stream& in,
                                      const HeatExchange& found) const noexcept {
    const double flow = std::abs(in.dry_air) * media::capacity_per_dry_air(in);
    // Where no air blows the core comes to the temperature of the charge.
    if (!(found.conductance > 0))
        return {in.temperature, stream_to_wall(flow, conductance), 0, in.temperature};
    const double hot = found.conductance / conductance * hot_side_share *
                       std::pow(at_charge_flow / std::abs(in.gas_flow()), charge_exponent);
    const double share = std::clamp(hot, thinnest_film, 1 - thinnest_film);
    const double air =
        found.cooling_flow * media::dry_air().heat_capacity(found.cooling_temperature);
    const double mean = found.cooling_temperature + found.heat / (2 * air);
    const double air_side = found.conductance / (1 - share);
    return {mean + found.heat / air_side, stream_to_wall(flow, found.conductance / share), air_side,
            mean};
}

media::Stream ChargeCooler::exchanged(const media::Stream& in, const Surroundings& surroundings,
                                      HeatExchange& found) const noexcept {
    media::Stream out = rested(in, surroundings, found);
    const double flow = std::abs(in.dry_air);
    if (!surroundings.held.metal || !(flow > 0)) return out;
    const Core metal = core(in, found);
    const double given = metal.charge_side * (*surroundings.held.metal - metal.rest);
    out = media::equilibrium_at_enthalpy(out, media::enthalpy_per_dry_air(out) + given / flow);
    found.heat -= given;
    found.outlet_temperature = out.temperature;
    return out;
}

HeatExchange ChargeCooler::exchange(const media::Stream& in,
                                    const Surroundings& surroundings) const noexcept {
    HeatExchange found;
    exchanged(in, surroundings, found);
    return found;
}

media::Stream ChargeCooler::outlet(const media::Stream& in,
                                   const Surroundings& surroundings) const noexcept {
    HeatExchange found;
    media::Stream out = exchanged(in, surroundings, found);
    out.pressure = pressure_after(in.pressure, flow_loss(*this, in, out.temperature));
    return out;
}

std::array<media::LumpedNode, 1> ChargeCooler::thermal_nodes(
    const media::Stream& in, double, const Surroundings& surroundings) const noexcept {
    HeatExchange found;
    rested(in, surroundings, found);
    const Core metal = core(in, found);
    const double air =
        found.cooling_flow * media::dry_air().heat_capacity(found.cooling_temperature);
    const double to_air = air > 0 ? stream_to_wall(air, metal.air_side) : 0;
    return {
        media::LumpedNode{.name = "core",
                          .heat_capacity = core_mass * media::constants::aluminium_heat_capacity,
                          .heat = found.heat,
                          .warm_conductance = metal.charge_side,
                          .warm_temperature = metal.rest,
                          .cold_conductance = metal.air_side,
                          .cold_temperature = metal.air,
                          .still = media::Exchange{to_air, surroundings.ambient_temperature}}};
}

std::span<const fields::Row> ChargeCooler::rows() {
    using namespace fields;
    using C = ChargeCooler;
    static constexpr Row table[] = {
        required("conductance", "UA_0", at<&C::conductance>, fields::conductance("W/K"), {1, 1000},
                 "Conductance of the core at its two rated flows"),
        required("at_charge_flow", "m_h0", at<&C::at_charge_flow>, mass_flow("g/s"), {1, 500},
                 "Charge flow for which conductance and drop are given"),
        required("at_cooling_flow", "m_c0", at<&C::at_cooling_flow>, mass_flow("g/s"), {5, 5000},
                 "Cooling air flow for which the conductance is given"),
        required("face_area", "A_f", at<&C::face_area>, area("cm2"), {10, 10000},
                 "Area of the core that faces the cooling air"),
        with_default(
            "installed_share", "k_i", at<&C::installed_share>, number(), {0, 1}, 0.15,
            "Speed of the cooling air ahead of the core over the speed of the vehicle in the air",
            "no source"),
        with_default("under_hood_rise", "dT_u", at<&C::under_hood_rise>,
                     temperature_difference("K"), {0, 60}, 4,
                     "Warming of the cooling air before it meets the core", "common practice"),
        with_default("hot_side_share", "phi_h", at<&C::hot_side_share>, number(), {0, 1}, 0.2,
                     "Share of the thermal resistance on the charge's side at the rated flows",
                     "no source"),
        with_default("charge_exponent", "n_h", at<&C::charge_exponent>, number(), {0, 1}, 0.1,
                     "Power of the flow with which the charge's film grows",
                     "derived: 0.8 of turbulent flow in long tubes, 0.5 of short fins"),
        with_default("cooling_exponent", "n_c", at<&C::cooling_exponent>, number(), {0, 1}, 0.1,
                     "Power of the flow with which the cooling air's film grows",
                     "derived: 0.5 of the laminar film on short fins, 0.8 of turbulent flow"),
        with_default("drop", "dp_0", at<&C::drop>, pressure_difference("kPa"), {0, 50}, 2,
                     "Pressure loss of the charge at at_charge_flow and at_density", "no source"),
        with_default("at_density", "rho_0", at<&C::at_density>, density("kg/m3"), {0.6, 4}, 0.1,
                     "Density of the charge for which the drop is given",
                     "derived: 150 kPa and 100 degC"),
        with_default("drop_exponent", "n_p", at<&C::drop_exponent>, number(), {1, 2}, 0.1,
                     "Power of the flow with which the pressure loss grows",
                     "derived: 1.75 of smooth turbulent tubes (Blasius), 2 of ends and turns"),
        with_default("core_mass", "m_k", at<&C::core_mass>, mass("kg"), {0.1, 50}, 1,
                     "Mass of aluminium in core and tanks, which has to warm up",
                     "1 to 4 kg for small cores; estimate"),
    };
    return table;
}

}  // namespace windwall::charge
