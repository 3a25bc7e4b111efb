#include "windwall/engine/breathing.hpp"
#include "windwall/engine/combustion.hpp"
#include "windwall/engine/exhaust.hpp"
#include "windwall/engine/friction.hpp"
#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/engine/geometry.hpp"
#include "windwall/engine/heat.hpp"
#include "windwall/engine/injector.hpp"
#include "windwall/engine/knock.hpp"
#include "windwall/engine/pumping.hpp"
#include "windwall/engine/valves.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace windwall::engine;
using py::arg;

double rubbing_mean_pressure(double piston_speed, double boost) {
    return Friction{}.mean_pressure(piston_speed, boost);
}

double exhaust_pressure_rise(double flow, double back_pressure, double at_flow,
                             double ambient_pressure) {
    return Exhaust{back_pressure, at_flow}.rise(flow, ambient_pressure, at_flow);
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
                "over intake pressure 0.3 to 3. Heywood 1988, equation 6.2 (from memory).");
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
                "Pressure behind the exhaust valves above the weather, Pa, at a flow in kg/s, from "
                "the rise at one flow and 101 325 Pa. Square law.");
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
    physics.def("spark_penalty", py::vectorize(&spark_penalty), arg("retard"),
                "Indicated torque over that at the best spark, for a retard in rad, within 30 "
                "degrees. Fit to computed cycles.");
}

void bind_losses(py::module_& physics) {
    physics.def("rubbing_mean_pressure", py::vectorize(&rubbing_mean_pressure), arg("piston_speed"),
                arg("boost") = 0.0,
                "Rubbing mean effective pressure, Pa, of a small warm engine with the usual "
                "constants: 60 kPa + 4 kPa per m/s + 0.17 of the boost in Pa. Line through the "
                "component sums of SAE 890836 (constants from memory).");
    physics.def(
        "valve_mean_pressure", py::vectorize(&valve_mean_pressure), arg("piston_speed"),
        arg("pressure_ratio"), arg("valves"), arg("diameter_ratio"),
        "Mean effective pressure lost in the intake or the exhaust valves, Pa. Piston speed "
        "in m/s, manifold over ambient pressure, valves of a cylinder on this side, valve "
        "over bore diameter. SAE 890836 (constant from memory).");
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
        "retard in rad. Slopes of Russ, SAE 960497; to 60 kPa above the anchor.");
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
    bind_injector(physics);
}

}  // namespace windwall::bindings
