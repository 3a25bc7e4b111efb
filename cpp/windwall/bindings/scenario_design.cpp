#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_entries.hpp"
#include "windwall/scenario/class_values.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <pybind11/stl.h>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;

namespace {

py::list class_values(const scenario::Scenario& scenario) {
    std::vector<ClassValueEntry> made;
    for (const scenario::ClassValue& one : scenario::class_values(scenario)) {
        ClassValueEntry& entry = made.emplace_back(
            ClassValueEntry{one.address, one.value, one.sigma, one.stated, one.words, {}, {}});
        for (const auto& [word, sigma] : one.narrowed)
            entry.narrowed.push_back({word, sigma});
        for (const engine::ClassPrior* row : one.rows)
            entry.sources.emplace_back(row->source);
    }
    return values_of(made);
}

/// The whole table, each row as it is stated.
py::list class_priors() {
    std::vector<ClassPriorEntry> made;
    for (const engine::ClassPrior& row : engine::class_priors())
        made.push_back({std::string(row.address), scenario::words_of(row.when), row.value,
                        row.sigma, std::string(row.source)});
    return values_of(made);
}

/// The unit in which the rows about a quantity are stated, by its address.
py::dict class_units() {
    py::dict made;
    for (const engine::ClassQuantity& quantity : engine::class_quantities())
        made[py::str(std::string(quantity.address))] = std::string(quantity.measure.unit);
    return made;
}

RatedFigureEntry entry(const engine::RatedFigure& one) {
    return {std::string(one.key), one.rated, one.sigma, one.before, one.met, one.unreconciled()};
}

MovedInputEntry entry(const engine::MovedInput& one) {
    return {scenario::of_engine(one.input.address),
            one.input.known.value,
            one.input.known.sigma,
            one.met.value,
            one.met.sigma,
            one.sigmas()};
}

py::object rated_fit(const scenario::Scenario& scenario) {
    if (!scenario.rated) return py::none();
    RatedFitEntry made;
    made.anchored = scenario.rated->anchored;
    for (const engine::RatedFigure& one : scenario.rated->fit.figures)
        made.figures.push_back(entry(one));
    for (const engine::MovedInput& one : scenario.rated->fit.inputs)
        made.inputs.push_back(entry(one));
    return values_of(made);
}

}  // namespace

void bind_design(py::module_& module) {
    module.def("class_values", &class_values, "scenario"_a,
               "What the design of the engine says of its values; empty where none is described.");
    module.def("class_priors", &class_priors, "The table of what engines of one design share.");
    module.def("rated_fit", &rated_fit, "scenario"_a,
               "How the stock engine meets its rated figures, SI; None where none are stated.");
    module.def("class_units", &class_units, "The unit of each quantity of that table.");
}

}  // namespace windwall::bindings
