#include "windwall/bindings/solve_answer.hpp"
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

std::vector<std::string> members(scenario::UpgradeSet set, const scenario::Menu& menu) {
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < menu.size(); ++i)
        if (scenario::holds(set, i)) ids.push_back(menu[i].id);
    return ids;
}

py::list plain_limits(const std::vector<solve::LimitViolation>& all) {
    py::list made;
    for (const solve::LimitViolation& passed : all)
        made.append(plain(passed));
    return made;
}

py::dict plain_set(const study::SetResult& set, std::vector<std::string> upgrades) {
    return py::dict("upgrades"_a = std::move(upgrades), "answered"_a = set.answered,
                    "recommended"_a = set.recommended, "reason"_a = set.reason,
                    "speed"_a = set.speed, "least_margin"_a = set.least_margin, "cost"_a = set.cost,
                    "hours"_a = set.hours, "passed"_a = plain_limits(set.passed),
                    "picks"_a = set.picks);
}

py::dict plain_worth(const study::UpgradeWorth& worth, const scenario::Menu& menu) {
    return py::dict("id"_a = menu[worth.upgrade].id, "alone"_a = worth.alone, "last"_a = worth.last,
                    "share"_a = worth.share, "in_target"_a = worth.in_target,
                    "outside"_a = worth.outside, "passed"_a = plain_limits(worth.passed));
}

py::object plain_missing(const std::optional<study::Missing>& missing) {
    if (!missing) return py::none();
    return py::dict("power"_a = missing->power, "drag_area"_a = missing->drag_area);
}

py::dict plain(const Ranking& ranking, const scenario::Menu& menu) {
    py::list upgrades, sets;
    for (const auto& worth : ranking.upgrades)
        upgrades.append(plain_worth(worth, menu));
    for (const auto& set : ranking.sets)
        sets.append(plain_set(set, members(study::in_menu(ranking, set.set), menu)));
    return py::dict(
        "status"_a = std::string(solve::name(ranking.status)), "sentence"_a = ranking.sentence,
        "octane"_a = ranking.octane, "upgrades"_a = upgrades, "sets"_a = sets,
        "target"_a = ranking.target, "best_by_cost"_a = ranking.best_by_cost,
        "best_by_hours"_a = ranking.best_by_hours, "cheapest_to_goal"_a = ranking.cheapest_to_goal,
        "missing"_a = plain_missing(ranking.missing), "sentences"_a = ranking.sentences);
}

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
    return plain(ranking, scenario.menu);
}

}  // namespace

void bind_rank(py::module_& module) {
    module.def("rank", &rank, "scenario"_a, "budget"_a, "upgrades"_a, "threads"_a, "progress"_a,
               "Every allowed set of the menu at three knock anchors, as plain objects.");
}

}  // namespace windwall::bindings
