#include "windwall/driveline/belt.hpp"
#include "windwall/driveline/belt_cvt.hpp"
#include "windwall/driveline/centrifugal_clutch.hpp"
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

double belt_wrap(double radius, double other_radius, double centre_distance) {
    return driveline::belt_wraps(radius, other_radius, centre_distance).driving;
}

double clutch_torque(double speed, double engagement_speed, double shoe_mass, double drum_radius,
                     double shoe_radius, double shoes, double friction) {
    return driveline::CentrifugalClutch{.engagement_speed = engagement_speed,
                                        .shoe_mass = shoe_mass,
                                        .drum_radius = drum_radius,
                                        .shoe_radius = shoe_radius,
                                        .shoes = shoes,
                                        .friction = friction}
        .capacity(speed);
}

double cvt_efficiency(double torque, double rated_torque, double ratio, double speed) {
    driveline::BeltCvt part;
    part.low_ratio = part.high_ratio = ratio;
    part.shift_speed = speed;
    part.rated_torque = rated_torque;
    return part.efficiency({speed, torque}, 0);
}

void bind_belts(py::module_& physics) {
    physics.def("belt_length", py::vectorize(&driveline::belt_length), "driving_radius"_a,
                "driven_radius"_a, "centre_distance"_a,
                "Pitch length, m, of an open belt on two pulleys, all in m; exact. Handbook "
                "geometry.");
    physics.def("belt_wrap", py::vectorize(&belt_wrap), "radius"_a, "other_radius"_a,
                "centre_distance"_a, "Angle, rad, that an open belt wraps on the first pulley.");
    physics.def("belt_driven_radius", py::vectorize(&driveline::driven_radius), "driving_radius"_a,
                "centre_distance"_a, "length"_a,
                "The other radius, m, that a belt of this length leaves.");
    physics.def("belt_tension_ratio", py::vectorize(&driveline::belt_tension_ratio), "friction"_a,
                "wrap"_a, "half_angle"_a,
                "Tight over slack tension at slip, each less the centrifugal tension; half the "
                "groove angle in rad, a quarter turn for a flat belt. Euler and Eytelwein.");
    physics.def("belt_pull", py::vectorize(&driveline::belt_pull), "strands"_a, "linear_density"_a,
                "speed"_a, "tension_ratio"_a,
                "Pull, N, at which a belt slips whose two strands are stretched to `strands` N "
                "together; kg/m and m/s.");
    physics.def("clamp_torque", py::vectorize(&driveline::clamp_torque), "friction"_a, "force"_a,
                "radius"_a, "half_angle"_a,
                "Greatest torque, N m, of a belt between sheaves pressed with an axial force, N.");
    physics.def("belt_cvt_efficiency", py::vectorize(&cvt_efficiency), "torque"_a, "rated_torque"_a,
                "ratio"_a, "speed"_a = 400.0,
                "Efficiency of a rubber-belt variator with the default losses, which have no "
                "source; torque in N m and speed in rad/s at the driving sheave, ratio driven "
                "over driving radius.");
    physics.def("centrifugal_clutch_torque", py::vectorize(&clutch_torque), "speed"_a,
                "engagement_speed"_a, "shoe_mass"_a, "drum_radius"_a, "shoe_radius"_a,
                "shoes"_a = 3.0, "friction"_a = 0.3,
                "Torque, N m, that a centrifugal clutch carries; speeds in rad/s, kg and m.");
}

}  // namespace

void bind_driveline_physics(py::module_& physics) {
    bind_belts(physics);
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
