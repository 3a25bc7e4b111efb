#include "windwall/charge/positive_blower.hpp"

#include "windwall/charge/blower_case.hpp"
#include "windwall/charge/blower_work.hpp"
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/media/constants.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/orifice.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double turn = 2 * std::numbers::pi;
constexpr double least_flow = 1e-9;  // kg/s, keeps the enthalpy rise finite where nothing flows
constexpr double short_step = 1e-8;  // of a temperature that Newton's method seeks

// Outside these the blower is scrap and the balance may have no answer; the temperature bends
// towards 1500 K and 100 K so that a solver can pass through such states.
constexpr double hot_knee = 1200, hot_room = 300;
constexpr double cold_knee = 150, cold_room = 50;

double held(double T) {
    if (T > hot_knee) return hot_knee + hot_room * (T - hot_knee) / (T - hot_knee + hot_room);
    if (T < cold_knee) return cold_knee - cold_room * (cold_knee - T) / (cold_knee - T + cold_room);
    return T;
}

double work_power(const PositiveBlower& blower, const media::Stream& in, double outlet_pressure,
                  double turns) {
    return turns * blower_indicated_work(in.pressure, outlet_pressure, blower.displacement,
                                         blower.built_in_ratio, in.gas.gamma(in.temperature));
}

double friction(const PositiveBlower& blower, double speed) {
    return std::abs(speed) *
           (blower.friction_torque +
            blower.friction_torque_per_speed * std::abs(speed) / PositiveBlower::reference_speed);
}

/// Outlet temperature of a charge in which nothing evaporates, where
/// m (h2 - h1) + G (T1 + T2)/2 = made + G T_behind: Newton, whose first step from T1 finds no rise
/// of the enthalpy. The left side bends so little that after a step this short the next is lost in
/// rounding.
double free_temperature(const media::Stream& in, const BlowerCase& housing, double made) {
    const double flow = std::max(in.dry_air, least_flow);
    const double before = media::enthalpy_per_dry_air(in);
    media::Stream out = in;
    double risen = 0;  // J per kg of dry air
    for (int step = 0; step < 20; ++step) {
        const double excess =
            flow * risen + housing.taken((in.temperature + out.temperature) / 2) - made;
        const double slope = flow * media::capacity_per_dry_air(out) + housing.conductance() / 2;
        const double change = excess / slope;
        out.temperature -= change;
        if (std::abs(change) <= short_step * std::abs(out.temperature)) break;
        risen = media::enthalpy_per_dry_air(out) - before;
    }
    return out.temperature;
}

/// Lets the liquid evaporate on the way: a share of what it would in equilibrium. The case meets
/// the cooler charge; two steps of the secant settle what it takes to within a watt or so.
void evaporate(Compression& does, const PositiveBlower& blower, const media::Stream& in,
               const BlowerCase& housing, double made) {
    const double flow = in.dry_air;
    const double before = media::enthalpy_per_dry_air(in);
    const media::Stream unsettled = does.outlet;
    double taken = housing.taken((in.temperature + unsettled.temperature) / 2);
    for (int step = 0; step < 3; ++step) {
        does.outlet = media::partly_settled(unsettled, before + (made - taken) / flow,
                                            blower.evaporated_inside);
        if (step == 2) break;
        const double asked = housing.taken((in.temperature + does.outlet.temperature) / 2);
        const double stiffness =
            1 + housing.conductance() / (2 * flow * media::capacity_per_dry_air(does.outlet));
        taken += (asked - taken) / stiffness;
    }
    does.casing_loss = taken;
    does.heat_to_charge = made - taken;
}

/// Outlet state, and the split of the heat between charge, case and bearings.
void heat(Compression& does, const PositiveBlower& blower, const media::Stream& in,
          double outlet_pressure, const Surroundings& surroundings) {
    const double made = does.indicated_power + blower.friction_to_charge * does.friction_power;
    does.bearing_loss = does.friction_power - blower.friction_to_charge * does.friction_power;
    const BlowerCase housing(blower, in, does.rotor_speed, does.bearing_loss, surroundings);
    const double free = free_temperature(in, housing, made);
    does.capped = free > hot_knee || free < cold_knee || in.dry_air < least_flow;
    does.outlet = in;
    does.outlet.pressure = outlet_pressure;
    does.outlet.temperature = held(free);
    if (does.capped) {
        does.heat_to_charge = media::enthalpy_flow(does.outlet) - media::enthalpy_flow(in);
        does.casing_loss = made - does.heat_to_charge;
    } else {
        does.casing_loss = housing.taken((in.temperature + does.outlet.temperature) / 2);
        does.heat_to_charge = made - does.casing_loss;
        if (in.liquid_share() > 0) evaporate(does, blower, in, housing, made);
    }
    if (does.outlet.liquid_share() > 0)
        does.outlet.film_share += (1 - does.outlet.film_share) * blower.film_behind;
    does.case_temperature = housing.temperature((in.temperature + does.outlet.temperature) / 2);
}

/// The leak is gas of the side it comes from, and takes up the inlet's room at that temperature.
void leak(Compression& does, const PositiveBlower& blower, const media::Stream& in,
          double outlet_pressure) {
    const bool back = outlet_pressure > in.pressure;
    const double T = back ? does.outlet.temperature : in.temperature;
    const media::Gas& gas = back ? does.outlet.gas : in.gas;
    does.leak_flow =
        media::orifice_flow(blower.leak_area, outlet_pressure, T, in.pressure, gas.R, gas.gamma(T));
    does.capacity = blower.swept_flow(in, does.rotor_speed) -
                    does.leak_flow * (gas.R * T) / (in.gas.R * in.temperature);
}

}  // namespace

double PositiveBlower::swept_flow(const media::Stream& in, double rotor_speed) const noexcept {
    const double relative = rotor_speed / reference_speed;
    const double fill = share_left(fill_loss * relative * relative);
    return in.density() * displacement * rotor_speed / turn * fill;
}

Compression PositiveBlower::compress(const media::Stream& in, double outlet_pressure,
                                     const Surroundings& surroundings) const noexcept {
    Compression does;
    does.rotor_speed = drive_ratio * surroundings.drive_speed;
    does.indicated_power = work_power(*this, in, outlet_pressure, does.rotor_speed / turn);
    does.friction_power = friction(*this, does.rotor_speed);
    heat(does, *this, in, outlet_pressure, surroundings);
    leak(does, *this, in, outlet_pressure);
    does.drive_by_crank(belt_efficiency);
    return does;
}

std::array<media::LumpedNode, 1> PositiveBlower::thermal_nodes(
    const media::Stream& in, double outlet_pressure,
    const Surroundings& surroundings) const noexcept {
    const Compression does = compress(in, outlet_pressure, surroundings);
    const BlowerCase housing(*this, in, does.rotor_speed, does.bearing_loss, surroundings);
    return {housing.node((in.temperature + does.outlet.temperature) / 2,
                         case_mass * media::constants::aluminium_heat_capacity)};
}

namespace {

using namespace fields;
using B = PositiveBlower;

constexpr Row table[] = {
    required("displacement", "V_d", at<&B::displacement>, volume("cm3"), {20, 5000},
             "Volume moved by one turn of the driven rotor"),
    required("drive_ratio", "i", at<&B::drive_ratio>, number(), {0.2, 20},
             "Turns of the driven rotor for each turn of the crankshaft"),
    with_default("built_in_ratio", "v_i", at<&B::built_in_ratio>, number(), {1, 2.5}, 0,
                 "Volume taken in over volume at the opening of the outlet; 1 for a Roots",
                 "by definition, a Roots blower has none"),
    with_default("leak_area", "CdA_L", at<&B::leak_area>, area("mm2"), {0, 100}, 5,
                 "Effective area of all gaps between outlet and inlet",
                 "no source; gaps of 0.06 to 0.12 mm would have 6 to 20 mm2"),
    with_default("friction_torque", "T_0", at<&B::friction_torque>, torque("N m"), {0, 5}, 0.15,
                 "Friction torque of gears, bearings and seals at the rotor shaft", "no source"),
    with_default("friction_torque_per_speed", "T_1", at<&B::friction_torque_per_speed>,
                 torque("N m"), {0, 5}, 0.05,
                 "Friction torque added at 10 000 rpm of the rotor, growing with speed",
                 "common practice"),
    with_default("friction_to_charge", "chi", at<&B::friction_to_charge>, number(), {0, 1}, 0.29,
                 "Share of the friction that heats the charge", "no source"),
    with_default("fill_loss", "k_N", at<&B::fill_loss>, percent(), {0, 30}, 4,
                 "Volume not filled at 10 000 rpm of the rotor, growing with the square of speed",
                 "no source; none unless measured"),
    with_default("belt_efficiency", "eta_b", at<&B::belt_efficiency>, number(), {0.7, 1}, 0.015,
                 "Power at the rotor shaft over power at the crankshaft",
                 "0.95 to 0.98 for new, aligned V-belts, a belt maker's notes"),
    optional("case_area", "A_c", at<&B::case_area>, area("cm2"), {20, 20000},
             "Outer surface of the case; when not given, by the displacement"),
    with_default("case_exchange", "x_c", at<&B::case_exchange>, number(), {0, 5}, 0.5,
                 "Heat from the charge to the case over that of a turbulent pipe, where its "
                 "conductance is not stated",
                 "pockets that go round as a pipe flows; no source"),
    optional("case_conductance", "UA_c", at<&B::case_conductance>, conductance("W/K"), {0, 50},
             "Between the charge, at the mean of its two temperatures, and the case; when not "
             "given, from surface and rotor speed"),
    optional("case_to_air", "hA_c", at<&B::case_to_air>, conductance("W/K"), {0, 50},
             "Between the case and the air under the bodywork; when not given, from its "
             "surface"),
    with_default("mount_conductance", "k_m", at<&B::mount_conductance>, conductance("W/K"), {0, 50},
                 1, "Between the case and what it is bolted to",
                 "0.5 to 3 of a bracket or flange of aluminium with its joints; estimate"),
    with_default("mount_temperature", "T_m", at<&B::mount_temperature>, temperature("degC"),
                 {-40, 200}, 15, "Temperature of what it is bolted to", "no source; a warm block"),
    optional("case_temperature", "T_c", at<&B::case_temperature>, temperature("degC"), {-40, 250},
             "Temperature of the case; when not given, the one at which it gives off what it "
             "takes"),
    with_default("case_mass", "m_c", at<&B::case_mass>, mass("kg"), {0.2, 100}, 2,
                 "Mass of aluminium in the case", "3 to 6 kg for small blowers; estimate"),
    with_default("evaporated_inside", "x_e", at<&B::evaporated_inside>, number(), {0, 1}, 0.29,
                 "Of the liquid that could evaporate by the outlet, the share that does",
                 "no source; anything from none to all of it"),
    with_default("film_behind", "w_b", at<&B::film_behind>, number(), {0, 1}, 0.2,
                 "Of the drops that did not evaporate, the share that leaves along the walls",
                 "rotors and case catch what cannot turn with the gas, drops of 50 um in the "
                 "main; no source for the number"),
    with_default("rotor_inertia", "J", at<&B::rotor_inertia>, inertia("kg m2"), {0, 0.1}, 5e-4,
                 "Moment of inertia of both rotors, referred to the driven one",
                 "derived: two half-solid rotors of aluminium, 80 to 90 mm wide and long"),
    optional("rated_speed", "N_max", at<&B::rated_speed>, angular_speed("rpm"), {1000, 60000},
             "Highest rotor speed its maker allows")
        .watching("rotor_speed", "rated rotor speed"),
    optional("rated_outlet_temperature", "T_max", at<&B::rated_outlet_temperature>,
             temperature("degC"), {60, 300}, "Highest outlet temperature its maker allows")
        .watching("outlet/temperature", "rated outlet temperature: rotors grow into the case"),
    optional("rated_pressure_ratio", "r_max", at<&B::rated_pressure_ratio>, number(), {1, 4},
             "Highest pressure ratio its maker allows, from the local air")
        .watching("load_ratio", "rated pressure ratio, by the difference of pressures"),
};

}  // namespace

std::span<const Row> PositiveBlower::rows() { return table; }

}  // namespace windwall::charge
