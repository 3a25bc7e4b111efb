#include "windwall/engine/breathing.hpp"
#include "windwall/engine/combustion.hpp"
#include "windwall/engine/cooling.hpp"
#include "windwall/engine/dilution.hpp"
#include "windwall/engine/end_gas.hpp"
#include "windwall/engine/evaporation.hpp"
#include "windwall/engine/exhaust.hpp"
#include "windwall/engine/friction.hpp"
#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/engine/geometry.hpp"
#include "windwall/engine/heat.hpp"
#include "windwall/engine/injector.hpp"
#include "windwall/engine/knock.hpp"
#include "windwall/engine/mixture.hpp"
#include "windwall/engine/oil.hpp"
#include "windwall/engine/pumping.hpp"
#include "windwall/engine/valves.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace windwall::engine;
using py::arg;

double rubbing_mean_pressure(double piston_speed, double boost, double oil_temperature) {
    return Friction{}.mean_pressure(piston_speed, boost, Oil{}.friction_share(oil_temperature));
}

double exhaust_pressure_rise(double flow, double back_pressure, double at_flow,
                             double ambient_pressure, double charge_temperature) {
    return Exhaust{back_pressure, at_flow}.rise(flow, ambient_pressure, at_flow,
                                                charge_temperature);
}

double octane_requirement(double compression_ratio, double engine_speed, double manifold_pressure,
                          double charge_temperature, double head_temperature, double retard,
                          double lambda, double humidity_ratio, double exhaust_pressure,
                          double anchor_octane_number) {
    KnockAnchor anchor;
    anchor.octane_number = anchor_octane_number;
    return anchor.requirement({compression_ratio, engine_speed, manifold_pressure,
                               charge_temperature, head_temperature, retard, lambda, humidity_ratio,
                               exhaust_pressure});
}

double knock_integral_of(double compression_ratio, double engine_speed, double pressure,
                         double temperature, double exponent, double heat, double burn_start,
                         double burn_duration, double gas_constant) {
    return knock_integral({compression_ratio, engine_speed, pressure, temperature, exponent,
                           gas_constant, heat, burn_start, burn_duration});
}

double head_temperature(double charge_flow_share, double cooling_flow_share, double air_temperature,
                        double known_head_temperature, double known_air_temperature,
                        double gas_temperature) {
    const double known = (known_head_temperature - known_air_temperature) /
                         (gas_temperature - known_head_temperature);
    return head_between(gas_temperature, air_temperature,
                        known * cooling_ratio_share(charge_flow_share, cooling_flow_share));
}

py::dict blend_properties(double ethanol, double methanol, bool by_mass) {
    media::Fuel fuel;
    if (by_mass) {
        fuel.ethanol_by_mass = ethanol;
        fuel.methanol_by_mass = methanol;
    } else {
        fuel.ethanol = ethanol;
        fuel.methanol = methanol;
    }
    const auto shares = fuel.shares();
    py::dict row;
    row["methanol_by_mass"] = shares[1];
    row["ethanol_by_mass"] = shares[2];
    row["petrol_by_mass"] = shares[3];
    row["alcohol_molar_share"] = fuel.alcohol_molar_share();
    row["density"] = fuel.density();
    row["heating_value"] = fuel.heating_value();
    row["stoichiometric_ratio"] = fuel.stoichiometric_ratio();
    row["latent_heat"] = fuel.latent_heat();
    return row;
}

/// Own fuel per kg of dry air and lambda, where methanol and ethanol come with the charge.
py::tuple mixture_with_alcohol(double methanol, double ethanol, double target, bool trimmed) {
    media::Stream charge = media::ambient_stream(1e5, 300, 0, 1);
    charge.liquid[1] = methanol;
    charge.liquid[2] = ethanol;
    const Mixture burnt = mix(charge, {}, target, trimmed);
    return py::make_tuple(burnt.own_fuel, burnt.lambda);
}

void bind_heat(py::module_& physics) {
    physics.def("head_temperature", py::vectorize(&head_temperature), arg("charge_flow_share"),
                arg("cooling_flow_share"), arg("air_temperature") = 298.15,
                arg("known_head_temperature") = 473.15, arg("known_air_temperature") = 298.15,
                arg("gas_temperature") = 894.0,
                "Temperature of a head, K, from the flows of charge and of cooling air over those "
                "where it was known. Form of NACA TR 612 and 683, exponents 0.57 and "
                "0.58; temperatures in K.");
    physics.def("gas_temperature_shift", py::vectorize(&gas_temperature_shift),
                arg("charge_temperature"), arg("equivalence_ratio"),
                "K by which the gas that heats a head is hotter than with charge of 25 degC and an "
                "equivalence ratio of 1.17. Estimate; no source.");
    physics.def("oil_viscosity_ratio", py::vectorize(&oil_viscosity_ratio), arg("temperature"),
                arg("other_temperature") = 373.15,
                "Viscosity of SAE 30 oil over that at another temperature; K. Form of "
                "Seireg and Dandage, held against SAE J300.");
    physics.def("filling_head_share", py::vectorize(&filling_head_share), arg("charge_temperature"),
                arg("head_temperature"), arg("reference_head_temperature") = 473.15,
                arg("heating") = 0.2,
                "Filling over that with the head at a reference temperature; K. Estimate.");
    physics.def("evaporative_cooling", py::vectorize(&evaporative_cooling), arg("dose"),
                arg("latent_heat"), arg("vapour_heat_capacity"), arg("carried") = 0.0,
                "K by which a dose (kg per kg of dry air) cools the gas it evaporates from. Latent "
                "heat in J/kg, heat capacities in J/(kg K); `carried` is that of fuel and vapours "
                "already there, per kg of dry air.");
}

void bind_blends(py::module_& physics) {
    physics.def("blend_properties", &blend_properties, arg("ethanol"), arg("methanol"),
                arg("by_mass"),
                "Properties of petrol with shares of ethanol and methanol by volume before mixing, "
                "or by mass. SI units.");
    physics.def("molar_octane", py::vectorize(&media::molar_octane), arg("petrol_number"),
                arg("alcohol_number"), arg("alcohol_molar_share"),
                "Octane number of a blend, linear in molecules. Anderson et al., Energy & Fuels 24 "
                "(2010) 6576.");
    physics.def("mixture_with_alcohol", &mixture_with_alcohol, arg("methanol"), arg("ethanol"),
                arg("target"), arg("trimmed"),
                "Petrol per kg of dry air and lambda, where methanol and ethanol (kg per kg of dry "
                "air) come with the charge of a petrol engine set to a target lambda.");
}

void bind_end_gas(py::module_& physics) {
    physics.def("ignition_delay", py::vectorize(&ignition_delay), arg("octane_number"),
                arg("pressure"), arg("temperature"),
                "Ignition delay of end gas, s; Pa, K, octane number 80 to 100. Douaud and Eyzat, "
                "SAE 780080, constants as they are commonly quoted.");
    physics.def("burnt_share", py::vectorize(&burnt_share), arg("part"),
                "Share burnt at a part of the burn duration. Wiebe, a = 5, m = 2, normalised.");
    physics.def("knock_integral", py::vectorize(&knock_integral_of), arg("compression_ratio"),
                arg("engine_speed"), arg("pressure"), arg("temperature"), arg("exponent"),
                arg("heat"), arg("burn_start"), arg("burn_duration"), arg("gas_constant") = 275.0,
                "Livengood-Wu integral of the end gas for octane number 100, to 85 % burnt. State "
                "at bottom dead centre in Pa and K; heat in J/kg of charge; angles in rad after "
                "top dead centre; engine speed in rad/s.");
    physics.def("octane_of_integral", py::vectorize(&octane_of_integral), arg("integral"),
                "Octane number that makes a knock integral 1.");
    physics.def("knock_probability", py::vectorize(&knock_probability), arg("margin"),
                arg("spread"), "Chance that a normally distributed margin is below zero.");
}

void bind_geometry(py::module_& physics) {
    physics.def("swept_volume", py::vectorize(&engine::swept_volume), arg("bore"), arg("stroke"),
                arg("cylinders"), "Volume swept by all pistons, m3. Lengths in m.");
    physics.def("mean_piston_speed", py::vectorize(&mean_piston_speed), arg("stroke"),
                arg("engine_speed"),
                "Mean piston speed, m/s: stroke (m) x engine speed (rad/s) / pi.");
    physics.def(
        "swept_flow", py::vectorize(&swept_flow), arg("swept_volume"), arg("engine_speed"),
        "Volume swept per second by the intake strokes of a four-stroke, m3/s. Swept volume "
        "in m3, engine speed in rad/s.");
    physics.def("mean_effective_pressure", py::vectorize(&mean_effective_pressure), arg("power"),
                arg("swept_volume"), arg("engine_speed"),
                "Mean effective pressure of a four-stroke, Pa. Power in W, swept volume in m3, "
                "engine speed in rad/s.");
}

void bind_breathing(py::module_& physics) {
    physics.def("ideal_volumetric_efficiency", py::vectorize(&ideal_volumetric_efficiency),
                arg("compression_ratio"), arg("pressure_ratio"), arg("gamma"),
                "Volumetric efficiency of the ideal cycle, referred to the manifold, for exhaust "
                "over intake pressure 0.3 to 3. Derived from the "
                "first law; Heywood 1988 has it as equation 6.2.");
    physics.def("filling_temperature_share", py::vectorize(&filling_temperature_share),
                arg("charge_temperature"), arg("reference_temperature") = 298.15,
                "Volumetric efficiency, referred to the manifold, over that at the reference "
                "temperature, K. Square root, as in SAE J1349.");
    physics.def("mach_index", py::vectorize(&mach_index), arg("piston_speed"),
                arg("intake_area_share"), arg("sound_speed"),
                "Inlet Mach index. Speeds in m/s; mean flow area of the open intake valves as a "
                "share of the piston's area. JSME mechanical-engineering dictionary, 11:1002813.");
    physics.def(
        "mach_filling", py::vectorize(&mach_filling), arg("mach_index"), arg("intake_closing"),
        "Filling relative to the best, for Mach indices of 0.2 to 1.2 and an intake closing "
        "20 to 60 degrees (in rad) after bottom dead centre. Computed table.");
    physics.def("exhaust_pressure_rise", py::vectorize(&exhaust_pressure_rise), arg("flow"),
                arg("back_pressure"), arg("at_flow"), arg("ambient_pressure"),
                arg("charge_temperature") = 298.15,
                "Pressure behind the exhaust valves above the weather, Pa, at a flow in kg/s, from "
                "the rise at one flow and 101 325 Pa. Square law over the density of a gas that "
                "leaves 800 K hotter than the charge.");
}

void bind_combustion(py::module_& physics) {
    physics.def("fuel_air_efficiency", py::vectorize(&fuel_air_efficiency),
                arg("compression_ratio"), arg("equivalence_ratio"),
                "Indicated efficiency of the constant-volume fuel-air cycle with equilibrium "
                "products, compression ratio 6 to 12, equivalence ratio 0.6 to 1.4. Computed "
                "table, iso-octane, NASA properties.");
    physics.def("unburnt_share", py::vectorize(&unburnt_share), arg("equivalence_ratio"),
                "Share of the fuel's energy in the carbon monoxide and hydrogen of a rich mixture. "
                "Water-gas equilibrium frozen at 1740 K.");
    physics.def("slowed_burn", py::vectorize(&slowed_burn), arg("dilution"),
                "Burn duration over that at 5 % of burned gas, for a share of burned gas.");
    physics.def("share_that_burns", py::vectorize(&share_that_burns), arg("dilution"),
                "Share of the charge that burns before the flame goes out, for a share of burned "
                "gas.");
    physics.def("late_spark_wall_share", py::vectorize(&late_spark_wall_share), arg("retard"),
                "Heat to the chamber over that at the best spark, for a retard in rad.");
    physics.def("spark_penalty", py::vectorize(&spark_penalty), arg("retard"),
                "Indicated torque over that at the best spark, for a retard in rad, within 30 "
                "degrees. Fit to computed cycles.");
}

void bind_losses(py::module_& physics) {
    physics.def("rubbing_mean_pressure", py::vectorize(&rubbing_mean_pressure), arg("piston_speed"),
                arg("boost") = 0.0, arg("oil_temperature") = 373.15,
                "Rubbing mean effective pressure, Pa, of a small warm engine with the usual "
                "constants: 60 kPa + 4 kPa per m/s + 0.17 of the boost in Pa; the films of an oil "
                "in K, at 100 degC unless given. No source; 4.4 % of the fuel at "
                "full load, where a published balance has 3 %.");
    physics.def(
        "valve_mean_pressure", py::vectorize(&valve_mean_pressure), arg("piston_speed"),
        arg("density_ratio"), arg("valves"), arg("diameter_ratio"),
        "Mean effective pressure lost in the intake or the exhaust valves, Pa. Piston speed "
        "in m/s, density over 1.184 kg/m3, valves of a cylinder on this side, valve over bore "
        "diameter. Form of SAE 890836, constant not read there, scaled with density alone.");
}

void bind_knock(py::module_& physics) {
    const KnockAnchor usual;
    physics.def(
        "octane_requirement", py::vectorize(&octane_requirement),
        arg("compression_ratio") = usual.compression_ratio,
        arg("engine_speed") = usual.engine_speed,
        arg("manifold_pressure") = usual.manifold_pressure,
        arg("charge_temperature") = usual.charge_temperature,
        arg("head_temperature") = usual.head_temperature, arg("retard") = usual.retard,
        arg("lambda_") = usual.lambda, arg("humidity_ratio") = usual.humidity_ratio,
        arg("exhaust_pressure") = usual.exhaust_pressure,
        arg("anchor_octane_number") = usual.octane_number,
        "Octane number needed to keep the usual anchor engine from knock, known to 10. SI units, "
        "retard in rad. Slopes of Russ, SAE 960497; to twice the pressure.");
}

void bind_injector(py::module_& physics) {
    physics.def(
        "injector_pulse_width", py::vectorize(&injector_pulse_width), arg("fuel_flow"),
        arg("engine_speed"), arg("rated_flow"), arg("rated_pressure"), arg("pressure_drop"),
        arg("fuel_density"), arg("dead_time"), arg("count"),
        "Pulse width of one injection a cycle, s. Fuel flow of all injectors in kg/s, rated "
        "flow of one in m3/s, pressures in Pa. Orifice law.");
    physics.def(
        "injector_duty", py::vectorize(&injector_duty), arg("pulse_width"), arg("engine_speed"),
        "Share of the four-stroke cycle that a pulse (s) takes at an engine speed in rad/s.");
}

}  // namespace

void bind_engine_physics(py::module_& physics) {
    bind_geometry(physics);
    bind_breathing(physics);
    bind_combustion(physics);
    bind_losses(physics);
    bind_knock(physics);
    bind_end_gas(physics);
    bind_heat(physics);
    bind_blends(physics);
    bind_injector(physics);
}

}  // namespace windwall::bindings
