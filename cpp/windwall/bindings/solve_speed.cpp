#include "windwall/bindings/enum_names.hpp"
#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/bindings/solve_question.hpp"
#include "windwall/bindings/stated.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/scenario/result_address.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/answer/part_load.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/flyweight_fit.hpp"
#include "windwall/study/columns.hpp"
#include "windwall/study/ranking.hpp"

#include <pybind11/stl.h>

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

py::dict top_speed(const Scenario& scenario, bool brief) {
    solve::TopSpeedResult answer;
    {
        const py::gil_scoped_release others_run;
        answer = brief ? solve::answer_speed_briefly(scenario.vehicle)
                       : solve::answer_speed(scenario.vehicle, scenario.limits);
    }
    return values_of(answer);
}

py::dict operating_point(const Scenario& scenario, const std::map<std::string, Stated>& stated) {
    const Question asked = question<Question>(stated);
    solve::PointResult answer;
    {
        const py::gil_scoped_release others_run;
        answer = solve::answer_point(scenario.vehicle, asked.condition());
    }
    return values_of(answer);
}

/// Numbers of one row of a question, SI.
std::vector<double> several(const std::vector<Stated>& stated, std::string_view key) {
    const auto row = std::ranges::find(Question::rows(), key, &fields::Row::key);
    std::vector<double> made;
    for (const Stated& one : stated)
        made.push_back(read(one, *row));
    return made;
}

std::optional<std::size_t> counted_gear(const Scenario& scenario, std::optional<std::size_t> gear) {
    const std::size_t gears = driveline::gears(scenario.vehicle.driveline);
    if (gear && (*gear == 0 || *gear > gears))
        throw WrongInput("gear", "this vehicle has gears 1 to " + std::to_string(gears));
    return gear ? std::optional(*gear - 1) : gear;
}

py::dict hold_speed(const Scenario& scenario, const Stated& speed,
                    std::optional<std::size_t> gear) {
    const double road_speed = several({speed}, "road_speed").front();
    const auto in_gear = counted_gear(scenario, gear);
    solve::PartLoadResult answer;
    {
        const py::gil_scoped_release others_run;
        answer = solve::answer_hold_speed(scenario.vehicle, road_speed, in_gear);
    }
    return values_of(answer);
}

py::dict idle(const Scenario& scenario, const std::optional<Stated>& speed) {
    std::optional<double> engine_speed;
    if (speed) engine_speed = several({*speed}, "engine_speed").front();
    solve::PartLoadResult answer;
    {
        const py::gil_scoped_release others_run;
        answer = solve::answer_idle(scenario.vehicle, engine_speed);
    }
    return values_of(answer);
}

py::dict columns_of(const solve::Curve& curve) {
    return py::dict("addresses"_a = curve.addresses, "columns"_a = curve.columns,
                    "status"_a = enum_names(curve.status));
}

py::dict hold_speed_curve(const Scenario& scenario, const std::vector<Stated>& speeds,
                          std::optional<std::size_t> gear) {
    const std::vector<double> asked = several(speeds, "road_speed");
    const auto in_gear = counted_gear(scenario, gear);
    solve::Curve made;
    {
        const py::gil_scoped_release others_run;
        made = solve::hold_speed_curve(scenario.vehicle, asked, in_gear);
    }
    return columns_of(made);
}

py::dict idle_curve(const Scenario& scenario, const std::vector<Stated>& speeds) {
    const std::vector<double> asked = several(speeds, "engine_speed");
    solve::Curve made;
    {
        const py::gil_scoped_release others_run;
        made = solve::idle_curve(scenario.vehicle, asked);
    }
    return columns_of(made);
}

constexpr std::size_t most_points = 10000;  // of a curve in one gear

py::dict curve(const Scenario& scenario, std::optional<std::size_t> gear, std::size_t points) {
    if (points == 0 || points > most_points)
        throw WrongInput(
            "points", "a curve has 1 to " + std::to_string(most_points) + " points in each gear");
    const auto in_gear = counted_gear(scenario, gear);
    solve::Curve made;
    {
        const py::gil_scoped_release others_run;
        made = solve::full_throttle_curve(scenario.vehicle, in_gear, points);
    }
    return columns_of(made);
}

py::object result_row(const Text& address) {
    const fields::Row* row = scenario::result_row(address.utf8);
    return row ? row_of(*row) : py::object(py::none());
}

/// What the thrust has to speed up.
std::vector<double> accelerated_masses(const Scenario& scenario) {
    const solve::VehicleSolver solver(scenario.vehicle);
    std::vector<double> made;
    for (std::size_t gear = 0; gear < solver.gears(); ++gear)
        made.push_back(solver.accelerated_mass(gear));
    return made;
}

}  // namespace

void bind_solve(py::module_& module) {
    module.def(
        "gears",
        [](const Scenario& scenario) { return driveline::gears(scenario.vehicle.driveline); },
        "scenario"_a, "How many gears the vehicle has.");
    module.def("accelerated_masses", &accelerated_masses, "scenario"_a,
               "Mass with all that turns, kg, in each gear at its lowest ratio.");
    module.def("top_speed", &top_speed, "scenario"_a, "brief"_a = false,
               "The top speed, explained, as plain objects; briefly, only how fast and the point "
               "there.");
    module.def("operating_point", &operating_point, "scenario"_a, "stated"_a,
               "One operating point, explained, as plain objects.");
    module.def("full_throttle_curve", &curve, "scenario"_a, "gear"_a, "points"_a,
               "Full throttle over engine speed, one column a result address.");
    module.def("hold_speed", &hold_speed, "scenario"_a, "road_speed"_a, "gear"_a,
               "The pedal that holds a road speed, explained, as plain objects.");
    module.def("hold_speed_curve", &hold_speed_curve, "scenario"_a, "road_speeds"_a, "gear"_a,
               "The same over road speeds, one column a result address.");
    module.def("idle", &idle, "scenario"_a, "engine_speed"_a,
               "The pedal of an idle, explained, as plain objects.");
    module.def("idle_curve", &idle_curve, "scenario"_a, "engine_speeds"_a,
               "The same over engine speeds, one column a result address.");
    module.def("result_row", &result_row, "address"_a,
               "What the row of a result says, from its address alone; None where there is none.");
    module.def(
        "answer_rows",
        [] {
            return py::dict("top_speed"_a = rows_of(fields::group_type<solve::TopSpeedResult>),
                            "operating_point"_a = rows_of(fields::group_type<solve::PointResult>),
                            "flyweights"_a = rows_of(fields::group_type<solve::FlyweightFit>),
                            "part_load"_a = rows_of(fields::group_type<solve::PartLoadResult>),
                            "ranking"_a = rows_of(fields::group_type<study::Ranking>),
                            "sweep"_a = rows_of(fields::group_type<study::AnswerColumns>));
        },
        "What the rows of every answer say.");
    module.def(
        "question_rows", [] { return rows_of(fields::group_type<Question>); },
        "What the rows of a question say.");
}

}  // namespace windwall::bindings
