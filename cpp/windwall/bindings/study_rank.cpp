#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/study_listener.hpp"
#include "windwall/study/rank.hpp"

#include <pybind11/stl.h>

#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using study::Ranking;

namespace {

py::dict rank(const scenario::Scenario& scenario, std::optional<double> budget,
              std::optional<std::vector<std::string>> upgrades, unsigned threads,
              py::object progress) {
    Listener listener(std::move(progress));
    study::RankOptions options;
    options.budget = budget;
    options.upgrades = std::move(upgrades);
    options.batch = {threads, listener.progress()};
    Ranking ranking;
    {
        const py::gil_scoped_release others_run;
        ranking = study::rank(scenario, options);
    }
    listener.raise();
    return values_of(ranking);
}

}  // namespace

void bind_rank(py::module_& module) {
    module.def("rank", &rank, "scenario"_a, "budget"_a, "upgrades"_a, "threads"_a, "progress"_a,
               "Every allowed set of the menu at three knock anchors, as plain objects.");
}

}  // namespace windwall::bindings
