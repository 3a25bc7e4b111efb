#include "windwall/study/engine_group.hpp"

#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::study {
namespace {

using scenario::Choices;
using scenario::UpgradeSet;
using vehicle::Vehicle;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double wrong_by = 0.01;  // of a speed, more than curves are off

void tell(const solve::TopSpeed& found, const solve::LimitWatch& watch, SetResult& result) {
    result.answered = found.outcome.answered();
    if (!result.answered) return refuse(found, result);
    result.speed[middle] = found.speed();
    result.least_margin = solve::least_margin(found);
    result.passed = solve::passed_limits(found, watch);
    result.recommended = result.passed.empty();
    if (!result.recommended) result.refused_for = Refusal::passes_limit;
}

/// The choices that change the engine, of all that a set leaves open.
Choices of_engine(const scenario::Menu& menu, UpgradeSet chosen, const Choices& choices) {
    const auto open = scenario::open_choices(menu, chosen);
    Choices made;
    for (std::size_t i = 0; i < open.size(); ++i)
        if (scenario::is_of_engine(open[i].choice->path)) made.push_back(choices[i]);
    return made;
}

}  // namespace

void refuse(const solve::TopSpeed& found, SetResult& result) {
    result.refused_for = Refusal::no_answer;
    result.unanswered = solve::unanswered(found);
}

SetResult EngineGroup::solve(UpgradeSet chosen, SetResult result) {
    result.picks = picks(chosen);
    const auto fitted = scenario::install(scenario_, chosen, result.picks);
    if (const auto* refusal = std::get_if<std::string>(&fitted)) {
        result.refused_for = Refusal::not_installable;
        result.refusal = *refusal;
        return result;
    }
    const Vehicle& vehicle = std::get<Vehicle>(fitted);
    FittedEngine& engine = this->engine(vehicle, chosen, result.picks);
    if (!fastest_) fastest_ = engine.top_speed(vehicle, middle);
    tell(*fastest_, engine.limits(), result);
    result.speed.front() = engine.speed(vehicle, 0);
    result.speed.back() = engine.speed(vehicle, anchors - 1);
    return result;
}

/// The fastest values of the open choices: of those that the curves alone do not rule out.
Choices EngineGroup::picks(UpgradeSet chosen) {
    fastest_.reset();
    if (scenario::open_choices(scenario_.menu, chosen).empty()) return {};
    double fastest = 0;
    std::map<Choices, double> rough;
    const auto look = [&](const Vehicle& fitted, const Choices& choices) {
        const double speed = engine(fitted, chosen, choices).rough_speed(fitted);
        rough[choices] = speed;
        if (std::isfinite(speed)) fastest = std::max(fastest, speed);
        return speed;
    };
    const auto settle = [&](const Vehicle& fitted, const Choices& choices) {
        if (rough[choices] < fastest * (1 - wrong_by)) return nan;
        solve::TopSpeed found = engine(fitted, chosen, choices).top_speed(fitted, middle);
        if (!found.outcome.answered()) return nan;
        if (!fastest_ || found.speed() > fastest_->speed()) fastest_ = std::move(found);
        return fastest_->speed();
    };
    scenario::resolve_choice(scenario_, chosen, look);
    return scenario::resolve_choice(scenario_, chosen, settle);
}

FittedEngine& EngineGroup::engine(const Vehicle& fitted, UpgradeSet chosen,
                                  const Choices& choices) {
    auto& found = engines_[of_engine(scenario_.menu, chosen, choices)];
    if (!found) found = std::make_unique<FittedEngine>(fitted, scenario_, anchor_spread_);
    return *found;
}

}  // namespace windwall::study
