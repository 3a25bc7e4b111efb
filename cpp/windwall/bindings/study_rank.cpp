#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/study_listener.hpp"
#include "windwall/study/packed_sets.hpp"
#include "windwall/study/rank.hpp"
#include "windwall/study/solve_sets.hpp"

#include <pybind11/stl.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using study::Ranking;

namespace {

using Upgrades = std::optional<std::vector<std::string>>;

study::RankOptions of_these(Upgrades upgrades) {
    study::RankOptions options;
    options.upgrades = std::move(upgrades);
    return options;
}

std::vector<std::size_t> rank_groups(const scenario::Scenario& scenario, Upgrades upgrades) {
    return study::sizes_of_groups(scenario, of_these(std::move(upgrades)));
}

py::bytes solve_groups(const scenario::Scenario& scenario, Upgrades upgrades, std::size_t first,
                       std::size_t last, unsigned threads, py::object progress) {
    Listener listener(std::move(progress));
    study::RankOptions options = of_these(std::move(upgrades));
    options.batch = {threads, listener.progress()};
    std::string bytes;
    {
        const py::gil_scoped_release others_run;
        const study::Considered considered = study::consider(scenario, options);
        bytes = study::packed(study::solve_sets(scenario, considered, options, {first, last}));
    }
    listener.raise();
    return bytes;
}

/// What was solved piece by piece, as if in one.
std::vector<study::SetResult> joined(const std::vector<std::string>& pieces) {
    std::vector<study::SetResult> all;
    for (const std::string& piece : pieces) {
        auto some = study::unpacked_sets(piece);
        if (!some) throw std::invalid_argument("these are no sets that this build has solved");
        std::move(some->begin(), some->end(), std::back_inserter(all));
    }
    std::ranges::sort(all, {}, &study::SetResult::set);
    return all;
}

py::dict rank(const scenario::Scenario& scenario, std::optional<double> budget, Upgrades upgrades,
              unsigned threads, py::object progress,
              const std::optional<std::vector<std::string>>& solved) {
    Listener listener(std::move(progress));
    study::RankOptions options = of_these(std::move(upgrades));
    options.budget = budget;
    options.batch = {threads, listener.progress()};
    std::vector<study::SetResult> sets;
    if (solved) {
        sets = joined(*solved);
        options.solved = &sets;
    }
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
    module.def(
        "rank", &rank, "scenario"_a, "budget"_a, "upgrades"_a, "threads"_a, "progress"_a,
        "solved"_a = py::none(),
        "Every allowed set of the menu at three knock anchors, as plain objects; of sets that "
        "were solved in pieces, where they are handed over.");
    module.def("rank_groups", &rank_groups, "scenario"_a, "upgrades"_a,
               "How many sets of a ranking are solved together, group by group.");
    module.def("solve_groups", &solve_groups, "scenario"_a, "upgrades"_a, "first"_a, "last"_a,
               "threads"_a, "progress"_a, "The sets of some groups, packed.");
}

}  // namespace windwall::bindings
