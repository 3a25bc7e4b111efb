#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/scenario/physics.hpp"
#include "windwall/scenario/save.hpp"
#include "windwall/study/chosen.hpp"

#include <nlohmann/json.hpp>
#include <pybind11/stl.h>

#include <map>
#include <string>
#include <tuple>
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

/// Values stated for open choices, each as (id, address or nothing, value); a whole number is the
/// place of the value among those on offer, from 0.
using StatedValues = std::vector<std::tuple<Text, Text, py::object>>;

std::variant<scenario::Given, scenario::Place> value_or_place(const py::object& value) {
    if (!py::isinstance<py::int_>(value) || py::isinstance<py::bool_>(value)) return given(value);
    return scenario::Place{value.cast<std::size_t>()};
}

/// What is to be fitted, and which value each open choice takes.
struct Fitting {
    std::vector<std::string> ids;
    scenario::UpgradeSet set{};
    scenario::Choices choices;
};

/// What is not stated of the open choices is found by solving, as the fastest there is.
Fitting fitting(const Scenario& scenario, const std::vector<Text>& texts,
                const StatedValues& values) {
    Fitting made;
    for (const auto& text : texts)
        made.ids.push_back(text.utf8);
    std::vector<scenario::StatedChoice> stated;
    for (const auto& [upgrade, address, value] : values)
        stated.push_back({upgrade.utf8, address.utf8, value_or_place(value)});
    const py::gil_scoped_release others_run;
    const auto set = scenario::set_of(scenario.menu, made.ids);
    if (!set) throw WrongInput({{"", 0, 0, set.violation}}, "install");
    const auto wanted = scenario::wanted_choices(scenario, *set, stated);
    if (!wanted) throw WrongInput({{"", 0, 0, wanted.violation}}, "install");
    made.set = *set;
    made.choices = study::fastest_choices(scenario, *set, *wanted);
    return made;
}

Scenario fit(const Scenario& scenario, const std::vector<Text>& ids, const StatedValues& values) {
    const Fitting made = fitting(scenario, ids, values);
    return or_problems(scenario::fit(scenario, made.ids, made.choices));
}

py::list chosen(const Scenario& scenario, const std::vector<Text>& ids,
                const StatedValues& values) {
    const Fitting made = fitting(scenario, ids, values);
    py::list all;
    for (const study::Chosen& one : study::chosen_values(scenario, made.set, made.choices))
        all.append(values_of(one));
    return all;
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
    py::class_<Scenario>(module, "Scenario", "One scenario file, understood.")
        .def("get", &get, "address"_a, "What stands at an input address, numbers in SI.")
        .def("set", &set, "changes"_a, "Another scenario, with these values.")
        .def("fit", &fit, "ids"_a, "values"_a,
             "Another scenario, with these upgrades fitted; of what they leave open the fastest.")
        .def("chosen", &chosen, "ids"_a, "values"_a, "What fitting these takes of each choice.")
        .def("money", &money, "text"_a, "A sum in the currency of the file.")
        .def("text", &scenario::save, "The text of its file.")
        .def(
            "physics", [](const Scenario& made) { return scenario::physics_of(made).dump(); },
            "All that a result can depend on, as JSON.");
    module.def("loads", &loads, "text"_a, "source"_a, "A scenario from the text of its file.");
}

}  // namespace windwall::bindings
