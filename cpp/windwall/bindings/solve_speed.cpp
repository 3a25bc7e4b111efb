#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/solve_answer.hpp"
#include "windwall/bindings/solve_curve.hpp"
#include "windwall/bindings/solve_question.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/reason.hpp"
#include "windwall/solve/results/caution.hpp"

#include <pybind11/stl.h>

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

using Stated = std::variant<double, std::string>;  // SI, or a text with its unit

double read(const Stated& stated, const fields::Row& row) {
    const auto* text = std::get_if<std::string>(&stated);
    const auto read =
        text ? fields::read_quantity(*text, row) : fields::read_si(std::get<double>(stated), row);
    if (!read) throw WrongInput(row.key, read.violation);
    return read->value;
}

Question question(const std::map<std::string, Stated>& stated) {
    Question made;
    for (const fields::Row& row : Question::rows()) {
        const auto found = stated.find(std::string(row.key));
        if (found == stated.end()) continue;
        *static_cast<double*>(row.member.of(&made)) = read(found->second, row);
    }
    return made;
}

py::dict top_speed(const Scenario& scenario, bool brief) {
    solve::SpeedAnswer answer;
    {
        const py::gil_scoped_release others_run;
        answer = brief ? solve::answer_speed_briefly(scenario.vehicle)
                       : solve::answer_speed(scenario.vehicle, scenario.limits);
    }
    return plain(answer);
}

template <std::size_t count>
std::vector<std::string> words(const std::array<std::string_view, count>& names) {
    return {names.begin(), names.end()};
}

py::dict operating_point(const Scenario& scenario, const std::map<std::string, Stated>& stated) {
    const Question asked = question(stated);
    solve::PointAnswer answer;
    {
        const py::gil_scoped_release others_run;
        answer = solve::answer_point(scenario.vehicle, asked.condition());
    }
    return plain(answer);
}

py::dict curve(const Scenario& scenario, std::optional<std::size_t> gear, std::size_t points) {
    const std::size_t gears = driveline::gears(scenario.vehicle.driveline);
    if (gear && (*gear == 0 || *gear > gears))
        throw WrongInput("gear", "this vehicle has gears 1 to " + std::to_string(gears));
    Curve made;
    {
        const py::gil_scoped_release others_run;
        made =
            full_throttle_curve(scenario.vehicle, gear ? std::optional(*gear - 1) : gear, points);
    }
    return py::dict("addresses"_a = made.addresses, "columns"_a = made.columns,
                    "status"_a = made.status);
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
    module.def(
        "closed_lists",
        [] {
            return py::dict("status"_a = words(solve::status_names),
                            "limited_by"_a = words(solve::binding_names),
                            "about"_a = words(solve::concern_names));
        },
        "Every word that an answer may use for how it ended, what binds and what it warns of.");
    module.def(
        "result_rows", [] { return rows_of(fields::group_type<solve::OperatingPoint>); },
        "What the rows of an operating point say.");
    module.def(
        "question_rows", [] { return rows_of(fields::group_type<Question>); },
        "What the rows of a question say.");
}

}  // namespace windwall::bindings
