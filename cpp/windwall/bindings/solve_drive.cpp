#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/scenario_problems.hpp"
#include "windwall/bindings/scenario_text.hpp"
#include "windwall/bindings/study_listener.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/drive/record.hpp"

#include <pybind11/numpy.h>
#include <pybind11/stl.h>

#include <algorithm>
#include <chrono>
#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

constexpr std::chrono::milliseconds between_looks{100};

const vehicle::Outing& outing(const Scenario& scenario, const std::string& id) {
    const auto found = std::ranges::find(scenario.outings, id, &vehicle::Outing::id);
    if (found != scenario.outings.end()) return *found;
    std::string known;
    for (const vehicle::Outing& each : scenario.outings)
        known += (known.empty() ? "" : ", ") + each.id;
    throw WrongInput("outings", known.empty() ? "this scenario has no outings"
                                              : "no outing of that id; there are " + known);
}

py::array_t<double> array(const std::vector<double>& numbers) {
    return py::array_t<double>(static_cast<py::ssize_t>(numbers.size()), numbers.data());
}

py::dict event(const solve::DriveEvent& each) {
    return py::dict("what"_a = solve::happening_names[static_cast<std::size_t>(each.what)],
                    "time"_a = each.time, "distance"_a = each.distance,
                    "road_speed"_a = each.road_speed, "engine_speed"_a = each.engine_speed,
                    "about"_a = each.about, "value"_a = each.value, "leg"_a = each.leg,
                    "gear"_a = each.gear);
}

py::dict mark(const solve::Mark& each) {
    return py::dict("run"_a = each.run, "at_distance"_a = each.at_distance,
                    "at_speed"_a = each.at_speed, "time"_a = each.time,
                    "distance"_a = each.distance, "road_speed"_a = each.road_speed);
}

py::dict energy(const solve::DriveResult& drive) {
    py::dict made;
    for (std::size_t i = 0; i < solve::energies; ++i)
        made[py::str(std::string(solve::energy_names[i]))] = drive.energy[i];
    made["kinetic"] = drive.kinetic_after - drive.kinetic_before;
    made["changes"] = drive.changed;
    return made;
}

template <class Each, class Describe>
py::list list_of(const std::vector<Each>& all, Describe&& describe) {
    py::list made;
    for (const Each& each : all)
        made.append(describe(each));
    return made;
}

py::dict plain(const solve::DriveResult& drive) {
    py::list columns, phases;
    for (const auto& column : drive.columns)
        columns.append(array(column));
    for (const solve::Phase phase : drive.phase)
        phases.append(solve::phase_names[static_cast<std::size_t>(phase)]);
    return py::dict(
        "ended"_a = solve::drive_end_names[static_cast<std::size_t>(drive.end)],
        "status"_a = solve::name(drive.outcome.status),
        "worst"_a = std::string(drive.outcome.worst), "addresses"_a = drive.addresses,
        "columns"_a = columns, "phase"_a = phases, "events"_a = list_of(drive.events, event),
        "marks"_a = list_of(drive.marks, mark), "energy"_a = energy(drive), "steps"_a = drive.steps,
        "evaluations"_a = drive.evaluations, "points"_a = drive.points);
}

py::dict drive(const Scenario& scenario, const std::string& id,
               const std::vector<double>& mark_distances, const std::vector<double>& mark_speeds,
               double tolerance, double every, py::object progress) {
    const vehicle::Outing& asked = outing(scenario, id);
    solve::DriveOptions options{.tolerance = tolerance,
                                .every = every,
                                .every_standing = 10 * every,
                                .limits = scenario.limits,
                                .mark_distances = mark_distances,
                                .mark_speeds = mark_speeds};
    Listener listener(std::move(progress));
    const study::Progress go_on = listener.progress();
    auto looked = std::chrono::steady_clock::now();
    options.go_on = [&](double time) {
        const auto now = std::chrono::steady_clock::now();
        if (now - looked < between_looks) return true;
        looked = now;
        return go_on(static_cast<std::size_t>(time), 0);
    };
    solve::DriveResult made;
    {
        const py::gil_scoped_release others_run;
        made = solve::drive(scenario.vehicle, asked, options);
    }
    return plain(made);
}

}  // namespace

void bind_drive(py::module_& module) {
    module.def("drive", &drive, "scenario"_a, "outing"_a,
               "mark_distances"_a = std::vector<double>{}, "mark_speeds"_a = std::vector<double>{},
               "tolerance"_a = solve::DriveOptions{}.tolerance,
               "every"_a = solve::DriveOptions{}.every, "progress"_a = py::none(),
               "An outing over time, as plain objects. `progress(time, 0)` stops it by returning "
               "False; what was driven until then is in the answer.");
    module.def(
        "drive_rows",
        [] {
            return py::dict("moment"_a = rows_of(fields::group_type<solve::DriveMoment>),
                            "node"_a = rows_of(fields::group_type<solve::NodeMoment>));
        },
        "What the rows of a moment of a drive say, beside those of an operating point.");
}

}  // namespace windwall::bindings
