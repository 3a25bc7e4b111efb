#include "windwall/bindings/enum_names.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/study_listener.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/result_address.hpp"
#include "windwall/solve/results/ending.hpp"
#include "windwall/study/columns.hpp"

#include <pybind11/numpy.h>
#include <pybind11/stl.h>

#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

/// One value after the other as `set` would take it, without the menu; in SI.
std::vector<double> axis(const Scenario& scenario, const std::string& address,
                         const std::vector<scenario::Given>& values) {
    Scenario bare = scenario;
    bare.menu.clear();
    std::vector<double> numbers;
    std::vector<fields::Problem> wrong;
    for (const scenario::Given& value : values) {
        const scenario::Loaded made = scenario::set(bare, {{address, value}});
        for (const fields::Problem& problem : made.problems.sorted())
            wrong.push_back(problem);
        if (!made) continue;
        const auto found = scenario::get(*made.scenario, address);
        const auto* number = std::get_if<double>(&*found);
        if (!number) throw WrongInput(address, "only numbers can be swept");
        numbers.push_back(*number);
    }
    if (!wrong.empty()) throw WrongInput(std::move(wrong), "sweep");
    return numbers;
}

fields::FieldPath path(const vehicle::Vehicle& vehicle, const std::string& address) {
    auto found = fields::find_number(fields::group_type<vehicle::Vehicle>, &vehicle, address);
    if (!found) throw WrongInput(address, found.violation);
    return *found;
}

void check_results(const vehicle::Vehicle& vehicle, const std::vector<std::string>& outputs) {
    for (const std::string& address : outputs)
        if (!scenario::is_result(vehicle, address))
            throw WrongInput(address, scenario::no_result(vehicle, address));
}

py::array_t<double> array(const std::vector<double>& numbers) {
    return py::array_t<double>(static_cast<py::ssize_t>(numbers.size()), numbers.data());
}

py::dict plain(const study::AnswerColumns& answers) {
    py::dict made;
    for (const fields::Row& row : study::AnswerColumns::rows()) {
        const void* column = row.member.of(static_cast<const void*>(&answers));
        made[py::str(row.key.data(), row.key.size())] =
            array(*static_cast<const std::vector<double>*>(column));
    }
    py::list outputs;
    for (const auto& column : answers.outputs)
        outputs.append(array(column));
    made["status"] = enum_names(answers.status);
    made["outputs"] = outputs;
    return made;
}

py::dict sweep(const Scenario& scenario, const std::vector<std::string>& addresses,
               std::vector<std::vector<double>> values, const std::vector<std::string>& outputs,
               unsigned threads, py::object progress) {
    const vehicle::Vehicle& vehicle = scenario.vehicle;
    check_results(vehicle, outputs);
    study::Variants variants{{}, std::move(values)};
    for (const std::string& address : addresses)
        variants.inputs.push_back(path(vehicle, address));
    Listener listener(std::move(progress));
    study::AnswerColumns answers;
    {
        const py::gil_scoped_release others_run;
        answers = study::solve_columns(vehicle, variants, outputs, {threads, listener.progress()});
    }
    listener.raise();
    return plain(answers);
}

}  // namespace

void bind_sweep(py::module_& module) {
    module.def("axis", &axis, "scenario"_a, "address"_a, "values"_a,
               "Values of an input as the file would have them, in SI.");
    module.def("sweep", &sweep, "scenario"_a, "addresses"_a, "values"_a, "outputs"_a, "threads"_a,
               "progress"_a, "The top speed of every variant, one column for each input.");
}

}  // namespace windwall::bindings
