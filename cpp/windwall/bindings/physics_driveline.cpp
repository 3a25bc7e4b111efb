#include "windwall/driveline/chain.hpp"
#include "windwall/driveline/gearing.hpp"
#include "windwall/driveline/losses.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

namespace windwall::bindings {

namespace py = pybind11;
using namespace py::literals;

namespace {

double stage_torque(double torque, double speed, double ratio, double efficiency,
                    double drag_torque, double churning_torque) {
    return driveline::transmit({speed, torque}, ratio, {efficiency, drag_torque, churning_torque})
        .torque;
}

double stage_loss(double torque, double speed, double ratio, double efficiency, double drag_torque,
                  double churning_torque) {
    const driveline::Shaft in{speed, torque};
    return in.power() -
           driveline::transmit(in, ratio, {efficiency, drag_torque, churning_torque}).power();
}

}  // namespace

void bind_driveline_physics(py::module_& physics) {
    physics.def(
        "stage_torque", py::vectorize(&stage_torque), "torque"_a, "speed"_a, "ratio"_a,
        "efficiency"_a, "drag_torque"_a = 0.0, "churning_torque"_a = 0.0,
        "Torque, N m, behind a chain or a pair of gears: (T - drag) ratio efficiency. Torque "
        "in N m and speed in rad/s at the input; drag in N m, churning in N m at 5000 rpm. "
        "In overrun the efficiency divides. Losses split into drag and load as in Joachim, "
        "Boerner and Kurz, Gear Technology, September 2012.");
    physics.def("stage_loss", py::vectorize(&stage_loss), "torque"_a, "speed"_a, "ratio"_a,
                "efficiency"_a, "drag_torque"_a = 0.0, "churning_torque"_a = 0.0,
                "Power, W, that the same stage turns into heat; never negative.");
    physics.def(
        "chain_speed_ripple", py::vectorize(&driveline::chain_speed_ripple), "teeth"_a,
        "Share by which a chain's speed dips on a sprocket, 1 - cos(pi/z). From 5 teeth up. "
        "Polygon effect of machine-element textbooks.");
    physics.def("overall_ratio_speed", py::vectorize(&driveline::road_speed), "engine_speed"_a,
                "ratio"_a, "radius"_a, "slip"_a = 0.0,
                "Road speed, m/s, at an engine speed in rad/s, overall ratio, rolling radius in m "
                "and slip as a share.");
    physics.def("overall_ratio_engine_speed", py::vectorize(&driveline::engine_speed),
                "road_speed"_a, "ratio"_a, "radius"_a, "slip"_a = 0.0,
                "Engine speed, rad/s, at a road speed in m/s; slip below 1.");
}

}  // namespace windwall::bindings
