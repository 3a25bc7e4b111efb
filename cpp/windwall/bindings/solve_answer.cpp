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
py::object maybe(const std::optional<T>& made) {
    if (made) return values_of(*made);
    return py::none();
}

py::dict verdict(const solve::Verdict& verdict) {
    return py::dict("status"_a = std::string(solve::name(verdict.status)),
                    "answered"_a = verdict.answered(), "worst"_a = std::string(verdict.worst),
                    "residual"_a = verdict.residual, "evaluations"_a = verdict.evaluations);
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
void add_summit(const solve::Summit& summit, py::dict& made) {
    made["speed"] = summit.road_speed;
    made["gear"] = summit.gear + 1;
    made["engine_speed"] = summit.pull->point.condition.engine_speed;
    made["opening"] = summit.pull->point.condition.opening;
    made["surplus"] = summit.pull->surplus();
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

py::dict plain(const solve::Passed& passed) {
    return py::dict("address"_a = passed.limit.address, "max"_a = passed.limit.max,
                    "min"_a = passed.limit.min, "why"_a = passed.limit.why,
                    "first"_a = passed.first, "worst"_a = passed.worst,
                    "road_speed"_a = passed.road_speed, "engine_speed"_a = passed.engine_speed,
                    "gear"_a = passed.gear + 1);
}

py::dict plain(const solve::SpeedAnswer& answer) {
    py::dict made = verdict(answer.found.verdict);
    made["evaluations"] = answer.found.evaluations;
    made["points"] = answer.found.points;
    made["sentence"] = answer.sentence;
    made["limited_by"] = std::string(answer.limited_by);
    made["gearing"] = answer.gearing;
    made["next"] = answer.next;
    if (answer.found.summit.pull) add_summit(answer.found.summit, made);
    made["run_up"] = run_up(answer.found.run_up);
    made["point"] = maybe(answer.point);
    made["shaft"] = answer.shaft ? account(*answer.shaft) : py::list();
    made["heat"] = answer.heat ? account(answer.heat->account) : py::list();
    if (answer.heat) made["exhaust_temperature"] = answer.heat->exhaust_temperature;
    made["margins"] = margins(answer.margins);
    made["sensitivities"] = gains(answer.sensitivities);
    py::list passed;
    for (const solve::Passed& one : answer.passed)
        passed.append(plain(one));
    made["passed"] = passed;
    made["unrated"] = py::cast(answer.unrated);
    made["cautions"] = cautions(answer.cautions);
    return made;
}

py::dict plain(const solve::PointAnswer& answer) {
    py::dict made = verdict(answer.point.verdict);
    made["sentence"] = answer.sentence;
    made["engine_speed"] = answer.point.condition.engine_speed;
    made["road_speed"] = answer.point.condition.road_speed;
    made["opening"] = answer.point.condition.opening;
    made["point"] = maybe(answer.result);
    made["cautions"] = cautions(answer.cautions);
    return made;
}

}  // namespace windwall::bindings
