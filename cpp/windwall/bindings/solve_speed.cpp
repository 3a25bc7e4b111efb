#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/bindings/solve_question.hpp"
#include "windwall/bindings/stated.hpp"
#include "windwall/bindings/status_names.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/scenario/result_address.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/results/flyweight_fit.hpp"
#include "windwall/study/columns.hpp"
#include "windwall/study/ranking.hpp"

#include <pybind11/stl.h>

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

constexpr std::size_t most_points = 10000;  // of a curve in one gear

py::dict curve(const Scenario& scenario, std::optional<std::size_t> gear, std::size_t points) {
    if (points == 0 || points > most_points)
        throw WrongInput(
            "points", "a curve has 1 to " + std::to_string(most_points) + " points in each gear");
    const std::size_t gears = driveline::gears(scenario.vehicle.driveline);
    if (gear && (*gear == 0 || *gear > gears))
        throw WrongInput("gear", "this vehicle has gears 1 to " + std::to_string(gears));
    solve::Curve made;
    {
        const py::gil_scoped_release others_run;
        made = solve::full_throttle_curve(scenario.vehicle, gear ? std::optional(*gear - 1) : gear,
                                          points);
    }
    return py::dict("addresses"_a = made.addresses, "columns"_a = made.columns,
                    "status"_a = status_names(made.status));
}

py::object result_row(const Text& address) {
    const fields::Row* row = scenario::result_row(address.utf8);
    return row ? row_of(*row) : py::object(py::none());
}

}  // namespace

void bind_solve(py::module_& module) {
    module.def(
        "gears",
        [](const Scenario& scenario) { return driveline::gears(scenario.vehicle.driveline); },
        "scenario"_a, "How many gears the vehicle has.");
    module.def("top_speed", &top_speed, "scenario"_a, "brief"_a = false,
               "The top speed, explained, as plain objects; briefly, only how fast and the point "
               "there.");
    module.def("operating_point", &operating_point, "scenario"_a, "stated"_a,
               "One operating point, explained, as plain objects.");
    module.def("full_throttle_curve", &curve, "scenario"_a, "gear"_a, "points"_a,
               "Full throttle over engine speed, one column a result address.");
    module.def("result_row", &result_row, "address"_a,
               "What the row of a result says, from its address alone; None where there is none.");
    module.def(
        "answer_rows",
        [] {
            return py::dict("top_speed"_a = rows_of(fields::group_type<solve::TopSpeedResult>),
                            "operating_point"_a = rows_of(fields::group_type<solve::PointResult>),
                            "flyweights"_a = rows_of(fields::group_type<solve::FlyweightFit>),
                            "ranking"_a = rows_of(fields::group_type<study::Ranking>),
                            "sweep"_a = rows_of(fields::group_type<study::AnswerColumns>));
        },
        "What the rows of every answer say.");
    module.def(
        "question_rows", [] { return rows_of(fields::group_type<Question>); },
        "What the rows of a question say.");
}

}  // namespace windwall::bindings
