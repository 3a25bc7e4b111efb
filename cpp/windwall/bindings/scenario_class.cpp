#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/digest.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/scenario/save.hpp"

#include <pybind11/stl.h>

#include <map>
#include <string>
#include <variant>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

Scenario or_problems(scenario::Loaded loaded) {
    if (!loaded) throw WrongInput(loaded.problems.sorted(), loaded.file);
    return *std::move(loaded.scenario);
}

Scenario loads(std::string_view text, std::string_view source) {
    const py::gil_scoped_release others_run;
    return or_problems(scenario::load(text, source));
}

scenario::Answer get(const Scenario& scenario, const std::string& address) {
    const auto found = scenario::get(scenario, address);
    if (!found) throw WrongInput(address, found.violation);
    return *found;
}

Scenario set(const Scenario& scenario, const std::vector<std::pair<std::string, py::object>>& all) {
    scenario::Changes changes;
    for (const auto& [address, value] : all) {
        // Python counts a flag among the numbers, so it is looked for first.
        if (py::isinstance<py::bool_>(value)) {
            changes.emplace_back(address, value.cast<bool>());
        } else {
            changes.emplace_back(address, value.cast<scenario::Given>());
        }
    }
    return or_problems(scenario::set(scenario, changes));
}

Scenario fit(const Scenario& scenario, const std::vector<std::string>& ids) {
    return or_problems(scenario::fit(scenario, ids));
}

/// A sum in the one currency of the file.
double money(const Scenario& scenario, const std::string& text) {
    const std::string& currency = scenario.currency;
    if (currency.empty()) throw WrongInput("budget", "no upgrade of this file has a cost");
    const auto read = fields::read_quantity(text, fields::money(currency), "500 " + currency);
    if (!read) throw WrongInput("budget", read.violation);
    if (read->unit->text != currency) {
        throw WrongInput("budget", "the costs of this file are in " + currency + ", and " +
                                       fields::printable(text) +
                                       " is in another currency; none is turned into another");
    }
    if (read->value < 0) throw WrongInput("budget", "a budget is not negative");
    return read->value;
}

}  // namespace

void bind_scenario(py::module_& module) {
    module.def("loads", &loads, "text"_a, "source"_a, "A scenario from the text of its file.");
    py::class_<Scenario>(module, "Scenario", "One scenario file, understood.")
        .def("get", &get, "address"_a, "What stands at an input address, numbers in SI.")
        .def("set", &set, "changes"_a, "Another scenario, with these values.")
        .def("fit", &fit, "ids"_a, "Another scenario, with these upgrades fitted.")
        .def("money", &money, "text"_a, "A sum in the currency of the file.")
        .def("text", &scenario::save, "The text of its file.")
        .def("digest", &scenario::digest, "SHA-256 of the physics.");
}

}  // namespace windwall::bindings
