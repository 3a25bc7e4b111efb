#include "windwall/charge/characteristic.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <cmath>

namespace windwall::bindings {

namespace py = pybind11;
using namespace py::literals;

namespace {

charge::CharacteristicPoint design(double diameter, double speed, double slip_factor,
                                   double efficiency, double flow_coefficient, double density) {
    return charge::ImpellerEstimate{diameter, slip_factor, efficiency, flow_coefficient, density}
        .at(speed, 0.5);
}

double impeller_work(double diameter, double speed, double slip_factor) {
    return design(diameter, speed, slip_factor, 1, 0.1, 1).work;
}

double impeller_flow(double diameter, double speed, double flow_coefficient, double density) {
    return design(diameter, speed, 1, 1, flow_coefficient, density).flow;
}

double impeller_pressure_ratio(double diameter, double speed, double slip_factor, double efficiency,
                               double temperature, double heat_capacity, double gamma) {
    const double head = design(diameter, speed, slip_factor, efficiency, 0.1, 1).head;
    return std::pow(1 + head / (heat_capacity * temperature), gamma / (gamma - 1));
}

}  // namespace

void bind_compressor_physics(py::module_& physics) {
    physics.def("corrected_flow", py::vectorize(&charge::corrected_flow), "flow"_a, "pressure"_a,
                "temperature"_a, "reference_pressure"_a = 100e3, "reference_temperature"_a = 298.15,
                "Flow, kg/s, of the same compressor at the reference state of its map: "
                "m sqrt(T/T_ref)/(p/p_ref); Pa and K at its inlet.");
    physics.def("corrected_speed", py::vectorize(&charge::corrected_speed), "speed"_a,
                "temperature"_a, "reference_temperature"_a = 298.15,
                "Speed that goes with the same Mach number at the reference temperature: "
                "N/sqrt(T/T_ref).");
    physics.def("isentropic_head", py::vectorize(&charge::isentropic_head), "pressure_ratio"_a,
                "temperature"_a, "heat_capacity"_a = 1004.675, "gamma"_a = 1.4,
                "Least work, J/kg, of a pressure ratio: cp T (r^((g-1)/g) - 1).");
    physics.def("impeller_work", py::vectorize(&impeller_work), "diameter"_a, "speed"_a,
                "slip_factor"_a,
                "Work, J/kg, of an impeller at its design flow: sigma U2; m and rad/s. Textbooks "
                "of turbomachinery.");
    physics.def("impeller_flow", py::vectorize(&impeller_flow), "diameter"_a, "speed"_a,
                "flow_coefficient"_a, "density"_a,
                "Design flow, kg/s: flow coefficient, density, disc area and tip speed.");
    physics.def("impeller_pressure_ratio", py::vectorize(&impeller_pressure_ratio), "diameter"_a,
                "speed"_a, "slip_factor"_a, "efficiency"_a, "temperature"_a,
                "heat_capacity"_a = 1004.675, "gamma"_a = 1.4,
                "Pressure ratio of an impeller at its design flow: "
                "(1 + eta sigma U2/(cp T))^(g/(g-1)).");
}

}  // namespace windwall::bindings
