#include "windwall/scenario/class_values.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <pybind11/stl.h>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;

namespace {

py::list class_values(const scenario::Scenario& scenario) {
    py::list made;
    for (const scenario::ClassValue& one : scenario::class_values(scenario)) {
        std::vector<std::string> sources;
        for (const engine::ClassPrior* row : one.rows)
            sources.emplace_back(row->source);
        made.append(py::dict("address"_a = one.address, "value"_a = one.value,
                             "sigma"_a = one.sigma, "stated"_a = one.stated, "words"_a = one.words,
                             "narrowed"_a = one.narrowed, "sources"_a = sources));
    }
    return made;
}

/// The whole table, each row as it is stated.
py::list class_priors() {
    py::list made;
    for (const engine::ClassPrior& row : engine::class_priors())
        made.append(py::dict("address"_a = std::string(row.address),
                             "words"_a = scenario::words_of(row.when), "value"_a = row.value,
                             "sigma"_a = row.sigma, "source"_a = std::string(row.source)));
    return made;
}

/// The unit in which the rows about a quantity are stated, by its address.
py::dict class_units() {
    py::dict made;
    for (const engine::ClassQuantity& quantity : engine::class_quantities())
        made[py::str(std::string(quantity.address))] = std::string(quantity.measure.unit);
    return made;
}

py::dict figure(const engine::RatedFigure& one) {
    return py::dict("key"_a = std::string(one.key), "rated"_a = one.rated, "sigma"_a = one.sigma,
                    "before"_a = one.before, "met"_a = one.met,
                    "unreconciled"_a = one.unreconciled());
}

py::dict moved(const engine::MovedInput& one) {
    return py::dict("address"_a = scenario::of_engine(one.input.address),
                    "known"_a = one.input.known.value, "known_sigma"_a = one.input.known.sigma,
                    "value"_a = one.met.value, "sigma"_a = one.met.sigma,
                    "sigmas"_a = one.sigmas());
}

py::object rated_fit(const scenario::Scenario& scenario) {
    if (!scenario.rated) return py::none();
    py::list figures, inputs;
    for (const engine::RatedFigure& one : scenario.rated->fit.figures)
        figures.append(figure(one));
    for (const engine::MovedInput& one : scenario.rated->fit.inputs)
        inputs.append(moved(one));
    return py::dict("figures"_a = figures, "inputs"_a = inputs,
                    "anchored"_a = scenario.rated->anchored);
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
