#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/scenario/physics.hpp"
#include "windwall/scenario/save.hpp"

#include <nlohmann/json.hpp>
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
    if (loaded) return *std::move(loaded.scenario);
    auto problems = loaded.problems.sorted();
    if (const auto more = loaded.problems.size() - problems.size(); more > 0)
        problems.push_back({"", 0, 0, "and " + std::to_string(more) + " more problems"});
    throw WrongInput(std::move(problems), fields::printable(loaded.file, 200));
}

Scenario loads(const Text& text, const Text& source) {
    const py::gil_scoped_release others_run;
    return or_problems(scenario::load(text.utf8, source.utf8));
}

scenario::Answer get(const Scenario& scenario, const Text& address) {
    const auto found = scenario::get(scenario, address.utf8);
    if (!found) throw WrongInput(address.utf8, found.violation);
    return *found;
}

scenario::Given given(const py::object& value) {
    // Python counts a flag among the numbers, so it is looked for first.
    if (py::isinstance<py::bool_>(value)) return value.cast<bool>();
    if (py::isinstance<py::str>(value)) return value.cast<Text>().utf8;
    return value.cast<scenario::Given>();
}

Scenario set(const Scenario& scenario, const std::vector<std::pair<Text, py::object>>& all) {
    scenario::Changes changes;
    for (const auto& [address, value] : all)
        changes.emplace_back(address.utf8, given(value));
    return or_problems(scenario::set(scenario, changes));
}

Scenario fit(const Scenario& scenario, const std::vector<Text>& texts) {
    std::vector<std::string> ids;
    for (const auto& text : texts)
        ids.push_back(text.utf8);
    return or_problems(scenario::fit(scenario, ids));
}

/// A sum in the one currency of the file.
double money(const Scenario& scenario, const Text& sum) {
    const std::string& text = sum.utf8;
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
        .def(
            "physics", [](const Scenario& made) { return scenario::physics_of(made).dump(); },
            "All that a result can depend on, as JSON.");
}

}  // namespace windwall::bindings
