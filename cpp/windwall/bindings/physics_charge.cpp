#include "windwall/charge/blower_point.hpp"
#include "windwall/charge/blower_work.hpp"
#include "windwall/charge/crossflow.hpp"
#include "windwall/charge/filter.hpp"
#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/throttle.hpp"
#include "windwall/charge/throttle_area.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <array>
#include <numbers>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace charge;
using py::literals::operator""_a;

constexpr double degree = std::numbers::pi / 180;

/// A throttle body by its numbers, between two pressures, for a gas of constant R and gamma.
double throttle_flow(double inlet_pressure, double inlet_temperature, double outlet_pressure,
                     double opening, double bore, double shaft, double closed_angle,
                     double discharge_coefficient, double leak_area, double gas_constant,
                     double gamma) {
    Throttle throttle;
    throttle.bore = bore;
    throttle.shaft = shaft;
    throttle.closed_angle = closed_angle;
    throttle.discharge_coefficient = discharge_coefficient;
    throttle.leak_area = leak_area;
    media::Stream in;
    in.pressure = inlet_pressure;
    in.temperature = inlet_temperature;
    in.gas = media::perfect_gas(gas_constant, gas_constant * gamma / (gamma - 1));
    Surroundings surroundings;
    surroundings.throttle_opening = opening;
    return throttle.flow(in, outlet_pressure, surroundings);
}

void bind_throttle(py::module_& physics) {
    physics.def("throttle_area", py::vectorize(&throttle_area), "bore"_a, "shaft"_a,
                "plate_angle"_a, "closed_angle"_a = 6 * degree,
                R"(Open area of a butterfly throttle with a shaft across the bore, m2.

Lengths in m; angles in rad from the plane across the bore, between closed_angle and pi/2.
Exact for an elliptic plate of no thickness: bore less the plate's ellipse and the shaft's strip.)");
    physics.def("throttle_flow", py::vectorize(&throttle_flow), "inlet_pressure"_a,
                "inlet_temperature"_a, "outlet_pressure"_a, "opening"_a, "bore"_a, "shaft"_a = 8e-3,
                "closed_angle"_a = 6 * degree, "discharge_coefficient"_a = 0.8, "leak_area"_a = 0.0,
                "gas_constant"_a = 287.05, "gamma"_a = 1.4,
                R"(Gas flow through a butterfly throttle, kg/s; negative backwards.

Pa absolute, K, m, rad, m2; opening 0 (shut) to 1 (wide) is the share of the plate's travel.
Isentropic jet without recovery up to half travel; from there on it regains pressure smoothly, up
to the sudden expansion of Borda and Carnot wide open.)");
}

void bind_restrictions(py::module_& physics) {
    physics.def("darcy_friction_factor", py::vectorize(&darcy_friction_factor), "reynolds"_a,
                "relative_roughness"_a = 0.0,
                "Darcy friction factor of a round pipe, laminar to rough turbulent.\n\n"
                "Churchill, Chemical Engineering 84 (1977) 91. Reynolds number above 0.001.");
    physics.def("air_viscosity", py::vectorize(&air_viscosity), "temperature"_a,
                "Dynamic viscosity of air, Pa s, at a temperature in K.\n\n"
                "Sutherland's law with the constants of the U.S. Standard Atmosphere 1976.");
    physics.def(
        "duct_pressure_drop", py::vectorize(&duct_pressure_drop), "flow"_a, "density"_a,
        "viscosity"_a, "length"_a, "bore"_a, "loss_coefficient"_a = 0.0, "roughness"_a = 0.0,
        "Pressure loss of a round pipe with bends, Pa: (f L/D + K) rho V^2/2.\n\n"
        "kg/s, kg/m3, Pa s, m. Darcy-Weisbach, incompressible: 1 % low at Mach 0.09, 5 % at 0.17.");
    physics.def("filter_pressure_drop", py::vectorize(&filter_pressure_drop), "flow"_a, "density"_a,
                "drop"_a, "at_flow"_a, "linear_share"_a = 0.4, "at_density"_a = 1.2,
                "Pressure loss of an air filter, Pa, from one measured point.\n\n"
                "kg/s, kg/m3, Pa. Forchheimer's sum of a term in V and a term in rho V^2, of which "
                "linear_share is the first at the measured point.");
}

void bind_cooler(py::module_& physics) {
    physics.def("crossflow_effectiveness", py::vectorize(&crossflow_effectiveness),
                "transfer_units"_a, "capacity_ratio"_a,
                "Effectiveness of a cross-flow exchanger, both streams unmixed, exact.\n\n"
                "transfer_units UA/C_min 0 to 60, capacity_ratio C_min/C_max 0 to 1. Mason's "
                "series (1955).");
    physics.def("cooler_conductance", py::vectorize(&cooler_conductance), "charge_flow"_a,
                "cooling_flow"_a, "conductance"_a, "at_charge_flow"_a, "at_cooling_flow"_a,
                "hot_side_share"_a = 0.5, "charge_exponent"_a = 0.7, "cooling_exponent"_a = 0.6,
                "Conductance of a charge cooler, W/K, away from its rated flows (kg/s).\n\n"
                "Two films in series, each following its flow by a power law.");
}

void bind_blower_work(py::module_& physics) {
    physics.def("roots_efficiency", py::vectorize(&roots_efficiency), "pressure_ratio"_a,
                "gamma"_a = 1.4,
                "Isentropic work over the work of an ideal Roots blower.\n\n"
                "Pressure ratio above 0; g/(g-1) (r^((g-1)/g) - 1)/(r - 1).");
    physics.def("blower_indicated_work", py::vectorize(&blower_indicated_work), "inlet_pressure"_a,
                "outlet_pressure"_a, "displacement"_a, "built_in_ratio"_a = 1.0, "gamma"_a = 1.4,
                "Work of one revolution of a positive-displacement blower on the gas, J.\n\n"
                "Pa, m3 a revolution. Isentropic inside by built_in_ratio (1 for a Roots), then at "
                "constant volume to the outlet pressure, from either side.");
    physics.def("slip_speed", py::vectorize(&slip_speed), "leak_area"_a, "displacement"_a,
                "pressure_rise"_a, "inlet_pressure"_a, "inlet_temperature"_a,
                "gas_constant"_a = 287.05,
                "Rotor speed spent on the leak alone, rad/s.\n\n"
                "m2 (effective), m3 a revolution, Pa, K, J/(kg K). Incompressible jet at the "
                "density of the inlet, as in the industry's slip test at 1 psi.");
}

const char* word(BlowerBalance balance) {
    switch (balance) {
        case BlowerBalance::solved: return "solved";
        case BlowerBalance::runaway: return "runaway";
        case BlowerBalance::overwhelmed: return "overwhelmed";
    }
    return "";
}

/// The arguments of blower_point, in order.
enum {
    inlet_pressure,
    inlet_temperature,
    outlet_pressure,
    rotor_speed,
    displacement,
    leak_area,
    built_in_ratio,
    friction_torque,
    friction_to_charge,
    case_conductance,
    case_to_air,
    gas_constant,
    gamma_,
    how_many
};
using Numbers = std::array<double, how_many>;

BlowerPoint point_of(const Numbers& x) {
    PositiveBlower blower;
    blower.displacement = x[displacement];
    blower.drive_ratio = 1;
    blower.leak_area = x[leak_area];
    blower.built_in_ratio = x[built_in_ratio];
    blower.friction_torque = x[friction_torque];
    blower.friction_to_charge = x[friction_to_charge];
    blower.case_conductance = x[case_conductance];
    blower.case_to_air = x[case_to_air];
    blower.mount_conductance = 0;
    media::Stream in;
    in.pressure = x[inlet_pressure];
    in.temperature = x[inlet_temperature];
    in.gas = media::perfect_gas(x[gas_constant], x[gas_constant] * x[gamma_] / (x[gamma_] - 1));
    return blower_point(blower, in, x[outlet_pressure], x[rotor_speed]);
}

struct Answer {
    const char* name;
    double (*of)(const BlowerPoint&);
};
constexpr Answer answers[] = {
    {"flow", [](const BlowerPoint& p) { return p.gas_flow; }},
    {"leak_flow", [](const BlowerPoint& p) { return p.compression.leak_flow; }},
    {"outlet_temperature", [](const BlowerPoint& p) { return p.compression.outlet.temperature; }},
    {"indicated_power", [](const BlowerPoint& p) { return p.compression.indicated_power; }},
    {"friction_power", [](const BlowerPoint& p) { return p.compression.friction_power; }},
    {"shaft_power", [](const BlowerPoint& p) { return p.compression.shaft_power; }},
    {"casing_loss", [](const BlowerPoint& p) { return p.compression.casing_loss; }},
    {"bearing_loss", [](const BlowerPoint& p) { return p.compression.bearing_loss; }},
    {"case_temperature", [](const BlowerPoint& p) { return p.compression.case_temperature; }},
    {"heat_to_charge", [](const BlowerPoint& p) { return p.compression.heat_to_charge; }},
    {"volumetric_efficiency", [](const BlowerPoint& p) { return p.volumetric_efficiency; }},
    {"shaft_efficiency", [](const BlowerPoint& p) { return p.shaft_efficiency; }},
    {"temperature_efficiency", [](const BlowerPoint& p) { return p.temperature_efficiency; }},
};

py::dict blower_points(const py::args& given) {
    using Array = py::array_t<double, py::array::c_style | py::array::forcecast>;
    const auto numpy = py::module_::import("numpy");
    const py::sequence broadcast = numpy.attr("broadcast_arrays")(*given);
    std::array<Array, how_many> columns;
    for (std::size_t k = 0; k < how_many; ++k)
        columns[k] = Array::ensure(broadcast[k]);
    const auto size = columns[0].size();
    const py::object shape = columns[0].attr("shape");
    std::array<Array, std::size(answers)> results;
    for (auto& result : results)
        result = numpy.attr("empty")(shape);
    py::list words;
    for (py::ssize_t i = 0; i < size; ++i) {
        Numbers x;
        for (std::size_t k = 0; k < how_many; ++k)
            x[k] = columns[k].data()[i];
        const BlowerPoint point = point_of(x);
        words.append(word(point.balance));
        for (std::size_t k = 0; k < std::size(answers); ++k)
            results[k].mutable_data()[i] = answers[k].of(point);
    }
    py::dict out;
    const py::object one = py::tuple();  // indexing with () makes a plain number of a 0-d array
    for (std::size_t k = 0; k < std::size(answers); ++k)
        out[answers[k].name] = results[k][one];
    out["status"] = numpy.attr("array")(words, "dtype"_a = "U11").attr("reshape")(shape)[one];
    return out;
}

py::dict blower_point_of(const py::object& p1, const py::object& T1, const py::object& p2,
                         const py::object& speed, const py::object& volume, const py::object& leak,
                         const py::object& ratio, const py::object& torque, const py::object& share,
                         const py::object& inside, const py::object& outside, const py::object& R,
                         const py::object& g) {
    return blower_points(py::make_tuple(p1, T1, p2, speed, volume, leak, ratio, torque, share,
                                        inside, outside, R, g));
}

void bind_blower_point(py::module_& physics) {
    physics.def("blower_point", &blower_point_of, "inlet_pressure"_a, "inlet_temperature"_a,
                "outlet_pressure"_a, "rotor_speed"_a, "displacement"_a, "leak_area"_a = 0.0,
                "built_in_ratio"_a = 1.0, "friction_torque"_a = 0.0, "friction_to_charge"_a = 0.5,
                "case_conductance"_a = 0.0, "case_to_air"_a = 0.0, "gas_constant"_a = 287.05,
                "gamma"_a = 1.4,
                R"(A leaking positive-displacement blower between two given pressures.

Pa absolute, K, rad/s, m3 a revolution, m2 (effective), N m, W/K, J/(kg K); arrays broadcast. The heat
capacity is constant, gamma R/(gamma - 1). Returns a dictionary: flow and leak_flow in kg/s,
outlet_temperature in K, indicated_power, friction_power, shaft_power, heat_to_charge, casing_loss and bearing_loss in W,
case_temperature in K (conductances in W/K; the air around the case is as warm as the inlet),
volumetric_efficiency, shaft_efficiency, temperature_efficiency, and status. The hot leak takes up
room at the inlet, so the balance has two solutions or none: the larger flow is taken; without one
the numbers are NaN and status says "runaway" (the leak heats the inlet without end) or
"overwhelmed" (even cold, the leak is more than the rotors take in).)");
}

}  // namespace

void bind_charge_physics(py::module_& physics) {
    bind_throttle(physics);
    bind_restrictions(physics);
    bind_cooler(physics);
    bind_blower_work(physics);
    bind_blower_point(physics);
}

}  // namespace windwall::bindings
