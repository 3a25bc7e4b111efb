#include "windwall/bindings/solve_answer.hpp"

#include "windwall/bindings/rows_values.hpp"

#include <pybind11/stl.h>

#include <optional>
#include <string>
#include <vector>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;

namespace {

template <class T>
py::object optional(const std::optional<T>& made) {
    if (made) return values_of(*made);
    return py::none();
}

py::dict outcome(const solve::Outcome& outcome) {
    return py::dict("status"_a = std::string(solve::name(outcome.status)),
                    "answered"_a = outcome.answered(), "worst"_a = std::string(outcome.worst),
                    "residual"_a = outcome.residual, "evaluations"_a = outcome.evaluations);
}

py::list cautions(const std::vector<solve::Caution>& all) {
    py::list made;
    for (const solve::Caution& caution : all)
        made.append(py::make_tuple(std::string(solve::name(caution.about)), caution.address,
                                   caution.sentence));
    return made;
}

/// The total first, then what it is made of.
py::list account(const solve::Account& account) {
    py::list made;
    made.append(py::make_tuple(account.total.name, account.total.watts));
    for (const auto& entry : account.entries)
        made.append(py::make_tuple(entry.name, entry.watts));
    return made;
}

py::object run_up(const std::optional<solve::RunUp>& run) {
    if (!run) return py::none();
    return py::dict("speed"_a = run->speed, "time"_a = run->time, "gear"_a = run->gear + 1,
                    "start_gear"_a = run->start_gear + 1);
}

/// Where the climb ended; only of a vehicle that moves.
void add_summit(const solve::EquilibriumSpeed& equilibrium, py::dict& made) {
    made["speed"] = equilibrium.road_speed;
    made["gear"] = equilibrium.gear + 1;
    made["engine_speed"] = equilibrium.pull->point.condition.engine_speed;
    made["opening"] = equilibrium.pull->point.condition.opening;
    made["surplus"] = equilibrium.pull->excess_force();
}

/// What is left until the knock margin is nothing; None where it is not reached.
py::object margins(const std::optional<solve::Margins>& left) {
    if (!left) return py::none();
    return py::dict("blower"_a = left->blower, "drive_ratio"_a = left->drive_ratio,
                    "boost"_a = left->boost, "charge_temperature"_a = left->charge_temperature,
                    "spark"_a = left->spark);
}

py::list gains(const std::vector<solve::Sensitivity>& all) {
    py::list made;
    for (const solve::Sensitivity& entry : all)
        made.append(py::make_tuple(entry.change, entry.gain));
    return made;
}

}  // namespace

py::dict plain(const solve::LimitViolation& passed) {
    return py::dict("address"_a = passed.limit.address, "max"_a = passed.limit.max,
                    "min"_a = passed.limit.min, "why"_a = passed.limit.why,
                    "first"_a = passed.first, "worst"_a = passed.worst,
                    "road_speed"_a = passed.road_speed, "engine_speed"_a = passed.engine_speed,
                    "gear"_a = passed.gear + 1);
}

py::dict plain(const solve::SpeedAnswer& answer) {
    py::dict made = outcome(answer.found.outcome);
    made["evaluations"] = answer.found.evaluations;
    made["points"] = answer.found.points;
    made["sentence"] = answer.sentence;
    made["limited_by"] = std::string(answer.limited_by);
    made["gearing"] = answer.gearing;
    made["next"] = answer.next;
    if (answer.found.equilibrium.pull) add_summit(answer.found.equilibrium, made);
    made["run_up"] = run_up(answer.found.run_up);
    made["point"] = optional(answer.point);
    made["shaft"] = answer.shaft ? account(*answer.shaft) : py::list();
    made["heat"] = answer.heat ? account(answer.heat->account) : py::list();
    if (answer.heat) made["exhaust_temperature"] = answer.heat->exhaust_temperature;
    made["margins"] = margins(answer.margins);
    made["sensitivities"] = gains(answer.sensitivities);
    py::list passed;
    for (const solve::LimitViolation& one : answer.passed)
        passed.append(plain(one));
    made["passed"] = passed;
    made["unrated"] = py::cast(answer.unrated);
    made["cautions"] = cautions(answer.cautions);
    return made;
}

py::dict plain(const solve::PointAnswer& answer) {
    py::dict made = outcome(answer.point.outcome);
    made["sentence"] = answer.sentence;
    made["engine_speed"] = answer.point.condition.engine_speed;
    made["road_speed"] = answer.point.condition.road_speed;
    made["opening"] = answer.point.condition.opening;
    made["point"] = optional(answer.result);
    made["cautions"] = cautions(answer.cautions);
    return made;
}

}  // namespace windwall::bindings
