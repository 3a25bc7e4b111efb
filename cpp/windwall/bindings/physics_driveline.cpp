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

double flyweight_force(double speed, double weights, double mass, double radius, double ramp) {
    const driveline::Flyweights closing{weights, mass, radius, ramp, {}, 0, 0};
    return closing.closing_force(speed, {});
}

double flyweight_speed(double force, double weights, double mass, double radius, double ramp) {
    const driveline::Flyweights closing{weights, mass, radius, ramp, {}, 0, 0};
    return closing.speed_for(force, {});
}

double flyweight_mass(double force, double speed, double weights, double radius, double ramp) {
    const driveline::Flyweights closing{weights, 1, radius, ramp, {}, 0, 0};
    return force / closing.closing_force(speed, {});
}

double torque_cam_force(double torque, double radius, double angle, double share) {
    const driveline::TorqueCam cam{0, 0, 0, radius, angle, share};
    return cam.closing_force(torque, 0);
}

double belt_wrap_ratio(double driving, double driven, double centre_distance) {
    const driveline::Wraps wraps = driveline::belt_wraps(driving, driven, centre_distance);
    return wraps.driving / wraps.driven;
}

double sheave_travel(double radius_change, double half_angle) {
    driveline::Sheaves sheaves;
    sheaves.groove_angle = 2 * half_angle;
    return sheaves.movement(radius_change);
}

void bind_sheaves(py::module_& physics) {
    physics.def("belt_driving_radius", py::vectorize(&driveline::driving_radius), "ratio"_a,
                "centre_distance"_a, "length"_a,
                "Pitch radius, m, of the driving sheave at which a belt of this length turns the "
                "driven one `ratio` times as slowly.");
    physics.def("belt_wrap_ratio", py::vectorize(&belt_wrap_ratio), "driving_radius"_a,
                "driven_radius"_a, "centre_distance"_a,
                "Wrap of the driving sheave over that of the driven one: in what ratio the forces "
                "along both shafts balance, and by how much one radius falls while the other "
                "rises. Virtual work of an inextensible belt without friction.");
    physics.def("sheave_travel", py::vectorize(&sheave_travel), "radius_change"_a, "half_angle"_a,
                "How far one moving half of a sheave goes, m, while the belt climbs by a radius, "
                "m: 2 tan(beta) dr, half the groove angle in rad.");
    physics.def("flyweight_force", py::vectorize(&flyweight_force), "speed"_a, "weights"_a,
                "mass"_a, "radius"_a, "ramp"_a,
                "Force, N, with which weights on a ramp close a sheave that turns at a speed, "
                "rad/s: n m w2 R dR/dx; mass of one in kg, its radius in m, and how far it goes "
                "out for each metre of closing. Virtual work of the centrifugal force.");
    physics.def("flyweight_speed", py::vectorize(&flyweight_speed), "force"_a, "weights"_a,
                "mass"_a, "radius"_a, "ramp"_a,
                "The speed, rad/s, at which they close with a force, N: of the spring alone where "
                "the belt is gripped, with what the driven sheave answers where it shifts.");
    physics.def("flyweight_mass", py::vectorize(&flyweight_mass), "force"_a, "speed"_a, "weights"_a,
                "radius"_a, "ramp"_a,
                "The mass of one weight, kg, that closes with a force, N, at a speed, rad/s.");
    physics.def("torque_cam_force", py::vectorize(&torque_cam_force), "torque"_a, "radius"_a,
                "angle"_a, "share"_a = 0.5,
                "Force, N, along the shaft of a helix of a mean radius, m, and angle from the "
                "plane across the shaft, rad, over which a share of a torque, N m, goes: "
                "f T/(r tan(alpha)), without friction.");
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
    bind_sheaves(physics);
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
