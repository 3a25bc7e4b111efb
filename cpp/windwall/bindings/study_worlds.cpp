#include "windwall/bindings/enum_names.hpp"
#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/study_listener.hpp"
#include "windwall/scenario/correlations.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/numbers.hpp"
#include "windwall/solve/results/ending.hpp"
#include "windwall/study/worlds.hpp"

#include <pybind11/numpy.h>
#include <pybind11/stl.h>

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

using Numbers = py::array_t<double, py::array::c_style | py::array::forcecast>;

py::list uncertain(const Scenario& scenario) {
    py::list all;
    for (const auto& one : scenario::uncertain_numbers(scenario))
        all.append(py::dict("address"_a = one.address, "value"_a = one.value, "sigma"_a = one.sigma,
                            "low"_a = one.low, "high"_a = one.high));
    return all;
}

py::list correlations(const Scenario& scenario) {
    py::list all;
    for (const auto& one : scenario::all_correlations(scenario))
        all.append(py::make_tuple(one.between[0], one.between[1], one.correlation));
    return all;
}

study::Worlds worlds_of(const Scenario& scenario, const Numbers& values) {
    const std::size_t numbers = scenario::uncertain_numbers(scenario).size();
    if (values.ndim() != 2 || static_cast<std::size_t>(values.shape(1)) != numbers)
        throw WrongInput("values", "worlds are a table of one row each and " +
                                       std::to_string(numbers) + " columns, one for each number");
    return {{values.data(), static_cast<std::size_t>(values.size())}, numbers};
}

py::array_t<double> table(const std::vector<double>& flat, std::size_t rows) {
    const std::size_t columns = rows == 0 ? 0 : flat.size() / rows;
    py::array_t<double> made({rows, columns});
    std::copy(flat.begin(), flat.end(), made.mutable_data());
    return made;
}

py::dict world_speeds(const Scenario& scenario, const Numbers& values,
                      const std::vector<std::vector<std::string>>& ids, unsigned threads,
                      py::object progress) {
    std::vector<scenario::UpgradeSet> sets;
    for (const auto& named : ids) {
        const auto set = scenario::set_of(scenario.menu, named);
        if (!set) throw WrongInput("upgrades", set.violation);
        sets.push_back(*set);
    }
    const study::Worlds worlds = worlds_of(scenario, values);
    Listener listener(std::move(progress));
    study::WorldSpeeds speeds;
    {
        const py::gil_scoped_release others_run;
        speeds = study::world_speeds(scenario, worlds, sets, {threads, listener.progress()});
    }
    listener.raise();
    return py::dict("speed"_a = table(speeds.speed, worlds.size()),
                    "end"_a = enum_names(speeds.end));
}

using Asked = std::map<std::string, std::optional<double>>;

study::Situation situation(const Asked& asked, std::vector<std::string> results) {
    const auto of = [&](const char* key) {
        const auto found = asked.find(key);
        return found == asked.end() ? std::nullopt : found->second;
    };
    study::Situation made;
    made.engine_speed = of("engine_speed");
    made.road_speed = of("road_speed");
    made.retard = of("retard");
    made.opening = of("opening").value_or(1);
    made.results = std::move(results);
    const auto gear = of("gear");
    if (gear && *gear < 1) throw WrongInput("gear", "gears are counted from 1");
    if (gear) made.gear = static_cast<std::size_t>(*gear) - 1;
    return made;
}

py::dict world_answers(const Scenario& scenario, const Numbers& values,
                       const std::vector<Asked>& asked,
                       const std::vector<std::vector<std::string>>& results, unsigned threads,
                       py::object progress) {
    if (asked.size() != results.size())
        throw WrongInput("results", "every situation has a list of results");
    std::vector<study::Situation> situations;
    for (std::size_t i = 0; i < asked.size(); ++i)
        situations.push_back(situation(asked[i], results[i]));
    const study::Worlds worlds = worlds_of(scenario, values);
    Listener listener(std::move(progress));
    study::WorldAnswers answers;
    {
        const py::gil_scoped_release others_run;
        answers =
            study::world_answers(scenario, worlds, situations, {threads, listener.progress()});
    }
    listener.raise();
    return py::dict("answers"_a = table(answers.answers, worlds.size()),
                    "status"_a = enum_names(answers.status));
}

}  // namespace

void bind_worlds(py::module_& module) {
    module.def("uncertain", &uncertain, "scenario"_a,
               "Every number that is not known exactly, SI, and the range that it is cut at.");
    module.def("correlations", &correlations, "scenario"_a,
               "Uncertain numbers that err together, by two addresses: those of the file, and what "
               "the rated figures leave.");
    module.def("world_speeds", &world_speeds, "scenario"_a, "values"_a, "sets"_a, "threads"_a,
               "progress"_a, "The speed of every set in every world, and how each ended.");
    module.def("world_answers", &world_answers, "scenario"_a, "values"_a, "situations"_a,
               "results"_a, "threads"_a, "progress"_a,
               "What every world has in each situation, result by result.");
}

}  // namespace windwall::bindings
