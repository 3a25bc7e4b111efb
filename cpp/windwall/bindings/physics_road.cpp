#include "windwall/road/coast_down.hpp"
#include "windwall/road/road_load.hpp"
#include "windwall/road/run_up.hpp"
#include "windwall/road/top_speed.hpp"
#include "windwall/road/tyre_size.hpp"
#include "windwall/road/tyre_tables.hpp"
#include "windwall/road/tyres.hpp"
#include "windwall/road/wind.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <cmath>
#include <limits>
#include <string>

namespace windwall::bindings {

namespace py = pybind11;
using namespace py::literals;

namespace {

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

double total_road_load(double speed, double mass, double drag_area, double rolling_resistance,
                       double density, double headwind, double grade, double rolling_rise) {
    road::Body body;
    body.mass = mass;
    body.drag_area = drag_area;
    body.rolling_resistance = rolling_resistance;
    body.rolling_rise = rolling_rise;
    return road::road_load(body, speed, density, headwind, grade).total();
}

double top_speed(double power, double constant, double square, double headwind) {
    return road::top_speed_in_wind(power, {constant, square}, headwind);
}

double coast_time(double mass, double constant, double square, double from, double to,
                  double linear) {
    return road::coast_down_time(mass, constant, linear, square, from, to);
}

double coast_distance(double mass, double constant, double square, double from, double to) {
    return road::coast_down_distance(mass, {constant, square}, from, to);
}

double coast_speed(double mass, double constant, double square, double from, double time) {
    return road::coast_down_speed(mass, {constant, square}, from, time);
}

double load_index(double index) {
    const bool whole = index == std::floor(index) && std::abs(index) < 1000;
    return whole ? road::load_index_mass(static_cast<int>(index)).value_or(unknown) : unknown;
}

double symbol_limit(const std::string& symbol) {
    const auto limit = road::speed_symbol_limit(symbol);
    if (!limit) throw py::value_error("No tyre has the speed symbol \"" + symbol + "\".");
    return *limit;
}

road::TyreSize understood(const std::string& size) {
    const road::TyreSize read = road::read_tyre_size(size);
    if (read.problem.empty()) return read;
    throw py::value_error("The tyre size \"" + size +
                          "\" is not understood: " + std::string(read.problem) + ".");
}

double size_radius(const std::string& size, double factor) {
    return road::rolling_radius(understood(size).diameter, factor);
}

py::dict tyre_code(const std::string& text) {
    const road::TyreSize size = understood(text);
    py::dict answer;
    answer["section_width"] = size.section_width;
    answer["aspect"] = size.aspect;
    answer["rim"] = size.rim;
    answer["diameter"] = size.diameter;
    answer["load_index"] = size.load_index;
    answer["speed_limit"] = size.speed_limit;
    return answer;
}

road::DrivenAxle named_axle(const std::string& axle) {
    constexpr auto& names = fields::Names<road::DrivenAxle>::names;
    for (std::size_t at = 0; at < names.size(); ++at)
        if (names[at] == axle) return static_cast<road::DrivenAxle>(at);
    throw py::value_error("The driven axle is \"rear\", \"front\" or \"all\", not \"" + axle +
                          "\".");
}

using Numbers = py::array_t<double>;

py::object traction(Numbers weight, Numbers grip, Numbers driven_share, Numbers height,
                    const std::string& axle) {
    const auto limit = [which = named_axle(axle)](double w, double mu, double share, double h) {
        return road::traction_limit(w, mu, share, h, which);
    };
    return py::vectorize(limit)(weight, grip, driven_share, height);
}

double force_time(double mass, double thrust, double constant, double square, double from,
                  double to) {
    return road::run_up_time_constant_force(mass, thrust, {constant, square}, from, to);
}

double force_distance(double mass, double thrust, double constant, double square, double from,
                      double to) {
    return road::run_up_distance_constant_force(mass, thrust, {constant, square}, from, to);
}

double force_speed(double mass, double thrust, double constant, double square, double from,
                   double distance) {
    return road::run_up_speed_constant_force(mass, thrust, {constant, square}, from, distance);
}

double power_time(double mass, double power, double constant, double square, double to) {
    return road::run_up_time_constant_power(mass, power, {constant, square}, to);
}

double power_distance(double mass, double power, double constant, double square, double to) {
    return road::run_up_distance_constant_power(mass, power, {constant, square}, to);
}

double power_speed(double mass, double power, double constant, double square, double distance) {
    return road::run_up_speed_constant_power(mass, power, {constant, square}, distance);
}

void bind_load(py::module_& physics) {
    physics.def("air_drag", py::vectorize(&road::air_drag), "drag_area"_a, "density"_a,
                "air_speed"_a,
                "Drag, N, 1/2 rho CdA v |v|: drag area in m2, density in kg/m3, air speed in m/s. "
                "Mach below 0.3.");
    physics.def("road_load", py::vectorize(&total_road_load), "speed"_a, "mass"_a, "drag_area"_a,
                "rolling_resistance"_a, "density"_a, "headwind"_a = 0.0, "grade"_a = 0.0,
                "rolling_rise"_a = 0.0,
                "Drag, rolling resistance and slope together, N. Speeds in m/s, mass in kg, drag "
                "area in m2, density in kg/m3, grade as rise over run, rolling_rise as the share "
                "that rolling resistance gains at 100 km/h.");
    physics.def("road_load_polynomial", py::vectorize(&road::road_load_polynomial), "speed"_a,
                "constant"_a, "linear"_a, "square"_a,
                "A + B v + C v^2, in any one set of units. Form of 40 CFR 1066.310.");
    physics.def("air_speed", py::vectorize(&road::air_speed), "speed"_a, "wind"_a, "angle"_a,
                "Speed of the air past the vehicle; any one unit of speed, angle in rad between "
                "where the wind comes from and the travel. 40 CFR 1037.528.");
    physics.def("yaw_angle", py::vectorize(&road::yaw_angle), "speed"_a, "wind"_a, "angle"_a,
                "Angle, rad, of that air to the travel. 40 CFR 1037.528.");
    physics.def(
        "top_speed_for_power", py::vectorize(&top_speed), "power"_a, "constant"_a, "square"_a,
        "headwind"_a = 0.0,
        "Speed, m/s, at which a power in W at the wheels is used up by a + c (v + w) |v + w|, "
        "a in N and c in N s2/m2, headwind w in m/s. Closed form in still air.");
}

void bind_coast_down(py::module_& physics) {
    physics.def("coast_down_time", py::vectorize(&coast_time), "mass"_a, "constant"_a, "square"_a,
                "start"_a, "end"_a, "linear"_a = 0.0,
                "Time, s, to roll from one speed to a lower one against A + B v + C v^2; SI, "
                "accelerated mass in kg.");
    physics.def("coast_down_distance", py::vectorize(&coast_distance), "mass"_a, "constant"_a,
                "square"_a, "start"_a, "end"_a,
                "Distance, m, to roll from one speed to a lower one against a + c v^2.");
    physics.def("coast_down_speed", py::vectorize(&coast_speed), "mass"_a, "constant"_a, "square"_a,
                "start"_a, "time"_a, "Speed, m/s, after rolling for a time in s; a not negative.");
}

void bind_run_up(py::module_& physics) {
    physics.def("run_up_constant_force_time", py::vectorize(&force_time), "mass"_a, "thrust"_a,
                "constant"_a, "square"_a, "start"_a, "end"_a,
                "Time, s, from one speed to a higher one under a constant thrust against "
                "a + c v^2; SI, accelerated mass in kg. Infinite beyond the terminal speed.");
    physics.def("run_up_constant_force_distance", py::vectorize(&force_distance), "mass"_a,
                "thrust"_a, "constant"_a, "square"_a, "start"_a, "end"_a,
                "Distance, m, of the same.");
    physics.def("run_up_constant_force_speed", py::vectorize(&force_speed), "mass"_a, "thrust"_a,
                "constant"_a, "square"_a, "start"_a, "distance"_a,
                "Speed, m/s, after a distance in m under a constant thrust.");
    physics.def("run_up_constant_power_time", py::vectorize(&power_time), "mass"_a, "power"_a,
                "constant"_a, "square"_a, "end"_a,
                "Time, s, from rest to a speed under a constant power at the wheels, in W, against "
                "a + c v^2 with a not negative. Infinite beyond the terminal speed.");
    physics.def("run_up_constant_power_distance", py::vectorize(&power_distance), "mass"_a,
                "power"_a, "constant"_a, "square"_a, "end"_a, "Distance, m, of the same.");
    physics.def("run_up_constant_power_speed", py::vectorize(&power_speed), "mass"_a, "power"_a,
                "constant"_a, "square"_a, "distance"_a,
                "Speed, m/s, after a distance in m from rest under a constant power.");
}

void bind_tyres(py::module_& physics) {
    physics.def("tyre_diameter", py::vectorize(&road::tyre_diameter), "section_width"_a, "aspect"_a,
                "rim"_a,
                "Overall diameter, m, rim + 2 width aspect; lengths in m, aspect as a share.");
    physics.def(
        "tyre_code", &tyre_code, "size"_a,
        "What a size such as \"155/80 R13 79T\", \"3.50-10\" or \"11x7.10-5\" says, SI units.");
    physics.def("rolling_radius", &size_radius, "size"_a, "factor"_a = road::Tyres{}.rolling_factor,
                "Rolling radius, m, of a tyre size; the factor is over half the overall diameter, "
                "by default the median of 70 cars of 1990 (Consumer Reports 1990).");
    physics.def("load_index_mass", py::vectorize(&load_index), "index"_a,
                "Greatest load, kg, of a load index from 0 to 130; NaN outside.");
    physics.def("speed_symbol_limit", &symbol_limit, "symbol"_a,
                "Greatest speed, m/s, of a speed symbol from A1 to Y.");
    physics.def(
        "traction_limit", &traction, "weight"_a, "grip"_a, "driven_share"_a,
        "height_over_wheelbase"_a, "axle"_a = "rear",
        "Greatest thrust, N, for a weight in N: friction coefficient, share of the standing "
        "weight on the driven axle, height of the centre of gravity over the wheelbase.");
    physics.def("tyre_slip", py::vectorize(&road::tyre_slip), "thrust"_a, "load"_a, "stiffness"_a,
                "Share of the wheels' speed lost, F / (C_s F_z), within +-0.5.");
}

}  // namespace

void bind_road_physics(py::module_& physics) {
    bind_load(physics);
    bind_coast_down(physics);
    bind_run_up(physics);
    bind_tyres(physics);
}

}  // namespace windwall::bindings
