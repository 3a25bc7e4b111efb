#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_entries.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/fields/units.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/numbers.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/scenario/schema.hpp"
#include "windwall/scenario/value.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/drive/drive.hpp"

#include <pybind11/stl.h>

#include <optional>
#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

fields::FieldPath path(const Scenario& scenario, const Text& address) {
    auto found = scenario::find_input(scenario.vehicle, address.utf8);
    if (!found) throw WrongInput(address.utf8, found.violation);
    return *found;
}

/// The dimension and the unit that a value is described in; of money, the currency of the file.
py::tuple measure(const Scenario& scenario, const Text& address) {
    const fields::Measure measure = path(scenario, address).row().measure;
    const bool counted = measure.dimension == fields::Dimension::money;
    const bool known = counted && !scenario.currency.empty();
    return py::make_tuple(std::string(fields::name_of(measure.dimension)),
                          known ? scenario.currency : std::string(measure.unit));
}

/// One standard deviation, SI: as the file says, or the default's own.
double sigma(const Scenario& scenario, const Text& address) {
    return scenario::sigma_of(scenario, address.utf8, path(scenario, address).row());
}

/// Address and sentence of every number that the vehicle, its day and its goal may have.
py::list numbers(const Scenario& scenario) {
    py::list made;
    for (const auto& path :
         fields::all_numbers(fields::group_type<vehicle::Vehicle>, &scenario.vehicle))
        if (!path.entry())
            made.append(py::make_tuple(path.text(), std::string(path.row().sentence)));
    return made;
}

py::list menu(const Scenario& scenario) {
    std::vector<MenuEntry> made;
    for (const scenario::Upgrade& one : scenario.menu) {
        const fields::Note* note = scenario.notes.find("upgrades/" + one.id + "/cost");
        made.push_back({one.id, one.terms.title, one.terms.cost,
                        note ? note->sigma : std::optional<double>(), one.terms.hours,
                        one.required_ids, one.excluded_ids});
    }
    return values_of(made);
}

py::list listed(const std::vector<solve::Limit>& limits) {
    std::vector<LimitEntry> made;
    for (const solve::Limit& limit : limits)
        made.push_back({limit.address, limit.max, limit.min, limit.why});
    return values_of(made);
}

py::list limits(const Scenario& scenario) {
    return listed(solve::limits_of(scenario.vehicle, scenario.limits));
}

py::list drive_limits(const Scenario& scenario) {
    return listed(solve::drive_limits(scenario.vehicle, scenario.limits));
}

py::dict heading(const Scenario& scenario) {
    const auto& header = scenario.header;
    const std::string units = header.units == fields::System::us ? "us" : "metric";
    return values_of(HeadingEntry{header.title, header.notes, units, scenario.currency});
}

/// Each number that was observed as (value, sigma), SI, beside the words.
py::list observed(const Scenario& scenario) {
    py::list made;
    for (std::size_t at = 0; at < scenario.observed.size(); ++at) {
        py::dict plain = values_of(scenario.observed[at]);
        const std::string address = "observed/" + std::to_string(at + 1) + "/";
        for (const fields::Row& row : scenario::Observation::rows()) {
            const py::str key(row.key.data(), row.key.size());
            const auto* note = scenario.notes.find(address + std::string(row.key));
            if (!py::isinstance<py::float_>(plain[key])) continue;
            plain[key] = py::make_tuple(plain[key], note ? note->sigma : std::nullopt);
        }
        made.append(plain);
    }
    return made;
}

/// What a vehicle without drive carries along, and the air it meets; SI.
py::dict rolling_free(const Scenario& scenario) {
    const vehicle::Vehicle& vehicle = scenario.vehicle;
    const double wheels = vehicle.body.rotating_mass(vehicle.tyres.rolling_radius(0));
    return py::dict("accelerated_mass"_a = vehicle.body.mass + wheels,
                    "air_density"_a = vehicle.day.air_density());
}

/// The vehicle with a value for every uncertain number.
Scenario world(const Scenario& scenario, const std::vector<double>& values) {
    const std::size_t numbers = scenario::uncertain_numbers(scenario).size();
    if (values.size() != numbers)
        throw WrongInput("values", "a world has " + std::to_string(numbers) + " numbers, found " +
                                       std::to_string(values.size()));
    return scenario::with_numbers(scenario, values);
}

}  // namespace

void bind_facts(py::module_& module) {
    module.def("measure", &measure, "scenario"_a, "address"_a,
               "The dimension and the unit of an input.");
    module.def("sigma", &sigma, "scenario"_a, "address"_a,
               "One standard deviation of an input, SI.");
    module.def("numbers", &numbers, "scenario"_a, "Every number of the vehicle and what it means.");
    module.def("menu", &menu, "scenario"_a, "The upgrades of the file.");
    module.def("limits", &limits, "scenario"_a, "The limits, as stated or built in.");
    module.def("drive_limits", &drive_limits, "scenario"_a,
               "The same on a drive, where the road may turn an engine beyond its limit.");
    module.def(
        "unrated", [](const Scenario& made) { return solve::unrated(made.vehicle, made.limits); },
        "scenario"_a, "Results that no rating is given for.");
    module.def("observed", &observed, "scenario"_a, "What the vehicle was seen to do.");
    module.def(
        "given",
        [](const Scenario& made, const Text& address) { return made.notes.given(address.utf8); },
        "scenario"_a, "address"_a,
        "Whether the file states this, rather than leaving the default.");
    module.def("rolling_free", &rolling_free, "scenario"_a,
               "Mass with the turning wheels, kg, and density of the day's air, kg/m3.");
    module.def(
        "fuel_density", [](const Scenario& made) { return made.vehicle.fuel.density(); },
        "scenario"_a, "Density of what is in the tank, kg/m3.");
    module.def("world", &world, "scenario"_a, "values"_a,
               "The scenario with a value, SI, for each of its uncertain numbers, in their order.");
    module.def("heading", &heading, "scenario"_a, "What the file says about itself.");
    module.def("schema_text", &scenario::schema_text, "The JSON Schema of scenario files.");
    module.def(
        "scenario_rows",
        [] {
            return py::dict("heading"_a = rows_of(fields::group_type<HeadingEntry>),
                            "menu"_a = rows_of(fields::group_type<MenuEntry>),
                            "limits"_a = rows_of(fields::group_type<LimitEntry>),
                            "class_values"_a = rows_of(fields::group_type<ClassValueEntry>),
                            "class_priors"_a = rows_of(fields::group_type<ClassPriorEntry>),
                            "rated_fit"_a = rows_of(fields::group_type<RatedFitEntry>));
        },
        "What the rows of all that a scenario tells say.");
    module.def(
        "observed_rows", [] { return rows_of(fields::group_type<scenario::Observation>); },
        "What the rows of an observation say.");
}

}  // namespace windwall::bindings
