#include "windwall/charge/positive_blower.hpp"

#include "windwall/charge/blower_work.hpp"
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/media/orifice.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

constexpr double turn = 2 * std::numbers::pi;
constexpr double least_flow = 1e-9;  // kg/s, keeps the enthalpy rise finite where nothing flows

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

/// Outlet temperature, and the split of the heat between charge and case.
void heat(Compression& does, const PositiveBlower& blower, const media::Stream& in) {
    const double made = does.indicated_power + blower.friction_to_charge * does.friction_power;
    const double into_charge = made - std::min(blower.casing_loss, std::max(made, 0.0));
    const double flow = in.gas_flow();
    const double before = in.gas.enthalpy(in.temperature);
    const double rise = into_charge / std::max(flow, least_flow);
    const double guess = in.temperature + rise / in.gas.heat_capacity(in.temperature);
    const double free = in.gas.temperature(before + rise, guess);
    does.outlet_temperature = held(free);
    does.capped = free > hot_knee || free < cold_knee || flow < least_flow;
    does.heat_to_charge =
        does.capped ? flow * (in.gas.enthalpy(does.outlet_temperature) - before) : into_charge;
    does.casing_loss = made - does.heat_to_charge;
    does.bearing_loss = does.friction_power - blower.friction_to_charge * does.friction_power;
}

/// The leak is gas of the side it comes from, and takes up the inlet's room at that temperature.
void leak(Compression& does, const PositiveBlower& blower, const media::Stream& in,
          double outlet_pressure) {
    const double T = outlet_pressure > in.pressure ? does.outlet_temperature : in.temperature;
    does.leak_flow = media::orifice_flow(blower.leak_area, outlet_pressure, T, in.pressure,
                                         in.gas.R, in.gas.gamma(T));
    does.capacity = blower.swept_flow(in, does.rotor_speed) - does.leak_flow * T / in.temperature;
}

void drive(Compression& does, double belt_efficiency) {
    does.shaft_power = does.indicated_power + does.friction_power;
    const bool drives_the_crank = does.shaft_power < 0;
    does.crank_power =
        drives_the_crank ? does.shaft_power * belt_efficiency : does.shaft_power / belt_efficiency;
    does.belt_loss = does.crank_power - does.shaft_power;
}

}  // namespace

double PositiveBlower::swept_flow(const media::Stream& in, double rotor_speed) const noexcept {
    const double relative = rotor_speed / reference_speed;
    const double fill = share_left(fill_loss * relative * relative);
    return in.density() * displacement * rotor_speed / turn * fill;
}

Compression PositiveBlower::compress(const media::Stream& in, double outlet_pressure,
                                     const Around& around) const noexcept {
    Compression does;
    does.rotor_speed = drive_ratio * around.engine_speed;
    does.indicated_power = work_power(*this, in, outlet_pressure, does.rotor_speed / turn);
    does.friction_power = friction(*this, does.rotor_speed);
    heat(does, *this, in);
    leak(does, *this, in, outlet_pressure);
    drive(does, belt_efficiency);
    does.outlet = in;
    does.outlet.temperature = does.outlet_temperature;
    does.outlet.pressure = outlet_pressure;
    return does;
}

std::span<const fields::Row> PositiveBlower::rows() {
    using namespace fields;
    using B = PositiveBlower;
    static constexpr Row table[] = {
        required("displacement", "V_d", at<&B::displacement>, volume("cm3"), {20, 5000},
                 "Volume moved by one turn of the driven rotor"),
        required("drive_ratio", "i", at<&B::drive_ratio>, number(), {0.2, 20},
                 "Turns of the driven rotor for each turn of the crankshaft"),
        usual("built_in_ratio", "v_i", at<&B::built_in_ratio>, number(), {1, 2.5}, 0,
              "Volume taken in over volume at the opening of the outlet; 1 for a Roots",
              "a Roots blower, which has none"),
        usual("leak_area", "CdA_L", at<&B::leak_area>, area("mm2"), {0, 100}, 4,
              "Effective area of all gaps between outlet and inlet",
              "from memory, to be confirmed"),
        usual("friction_torque", "T_0", at<&B::friction_torque>, torque("N m"), {0, 5}, 0.1,
              "Friction torque of gears, bearings and seals at the rotor shaft",
              "from memory, to be confirmed"),
        usual("friction_torque_per_speed", "T_1", at<&B::friction_torque_per_speed>, torque("N m"),
              {0, 5}, 0.05, "Friction torque added at 10 000 rpm of the rotor, growing with speed",
              "common practice"),
        usual("friction_to_charge", "chi", at<&B::friction_to_charge>, number(), {0, 1}, 0.2,
              "Share of the friction that heats the charge", "from memory, to be confirmed"),
        usual("fill_loss", "k_N", at<&B::fill_loss>, percent(), {0, 30}, 3,
              "Volume not filled at 10 000 rpm of the rotor, growing with the square of speed",
              "from memory, to be confirmed"),
        usual("belt_efficiency", "eta_b", at<&B::belt_efficiency>, number(), {0.7, 1}, 0.015,
              "Power at the rotor shaft over power at the crankshaft",
              "from memory, to be confirmed"),
        usual("casing_loss", "Q_c", at<&B::casing_loss>, power("W"), {0, 5000}, 50,
              "Heat the charge loses through the case; never more than the blower makes",
              "common practice: none"),
        usual("rotor_inertia", "J", at<&B::rotor_inertia>, inertia("kg m2"), {0, 0.1}, 5e-4,
              "Moment of inertia of both rotors, referred to the driven one",
              "from memory, to be confirmed"),
        maybe("rated_speed", "N_max", at<&B::rated_speed>, angular_speed("rpm"), {1000, 60000},
              "Highest rotor speed its maker allows"),
        maybe("rated_outlet_temperature", "T_max", at<&B::rated_outlet_temperature>,
              temperature("degC"), {60, 300}, "Highest outlet temperature its maker allows"),
        maybe("rated_pressure_ratio", "r_max", at<&B::rated_pressure_ratio>, number(), {1, 4},
              "Highest pressure ratio its maker allows"),
    };
    return table;
}

}  // namespace windwall::charge
