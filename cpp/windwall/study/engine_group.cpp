#include "windwall/study/engine_group.hpp"

#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace windwall::study {
namespace {

using scenario::Choices;
using scenario::UpgradeSet;
using vehicle::Vehicle;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double wrong_by = 0.01;  // of a speed, more than curves are off

bool has_thrust_to_spare(const solve::TopSpeed& found) {
    return solve::binding(found.equilibrium) == solve::Binding::no_answer;
}

void refuse(Refusal reason, SetResult& result) {
    if (result.refused_for == Refusal::none) result.refused_for = reason;
    result.recommended = false;
}

bool faster(const solve::TopSpeed& one, const solve::TopSpeed& other) {
    if (!one.outcome.answered() || !other.outcome.answered()) return one.outcome.answered();
    return one.speed() > other.speed();
}

void tell_spark(const solve::Point& there, SetResult& result) {
    if (there.spark.modelled) result.retard = there.spark.retard;
    result.lambda = there.work.lambda;
    result.opening = there.condition.opening;
}

void tell(const solve::TopSpeed& found, const solve::LimitWatch& watch, SetResult& result) {
    result.answered = found.outcome.answered();
    if (!result.answered) return refuse(found, result);
    result.recommended = true;
    result.limited_by = solve::binding(found.equilibrium);
    result.balance_speed = found.equilibrium.road_speed;
    result.least_margin = solve::least_margin(found);
    result.passed = solve::passed_limits(found, watch);
    tell_spark(found.equilibrium.full_throttle->point, result);
    if (has_thrust_to_spare(found)) {
        result.unanswered = solve::unanswered(found);
        refuse(Refusal::ends_without_answer, result);
    }
    if (!result.passed.empty()) refuse(Refusal::passes_limit, result);
}

void tell_speed(const solve::TopSpeed& found, std::size_t anchor, SetResult& result) {
    result.speed[anchor] = found.outcome.answered() ? found.speed() : nan;
    if (found.outcome.answered() && has_thrust_to_spare(found)) result.cut_short.push_back(anchor);
}

/// Slower than that by the curves alone, a vehicle is not the fastest of these.
double least_hopeful(const std::vector<double>& rough) {
    double most = 0;
    for (const double speed : rough)
        if (std::isfinite(speed)) most = std::max(most, speed);
    return most * (1 - wrong_by);
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
    const std::vector<Fitted> made = fit_each(chosen);
    if (made.empty()) {
        result.refused_for = Refusal::not_installable;
        result.refusal = std::get<std::string>(scenario::install(scenario_, chosen));
        return result;
    }
    for (std::size_t anchor = 0; anchor < anchors; ++anchor) {
        const Fastest best = fastest(made, anchor);
        result.choices[anchor] = best.fitted->choices;
        if (anchor == middle) tell(best.found, best.fitted->engine->limits(), result);
        tell_speed(best.found, anchor, result);
    }
    return result;
}

std::optional<solve::TopSpeed> EngineGroup::brief_top_speed(UpgradeSet chosen) {
    const std::vector<Fitted> made = fit_each(chosen);
    if (made.empty()) return std::nullopt;
    return fastest(made, 0).found;
}

/// Every combination of the open choices that can be installed, the first one first.
std::vector<EngineGroup::Fitted> EngineGroup::fit_each(UpgradeSet chosen) {
    std::vector<Fitted> made;
    scenario::each_choice(scenario_, chosen, [&](Vehicle fitted, const Choices& choices) {
        FittedEngine& engine = this->engine(fitted, chosen, choices);
        made.push_back({choices, std::move(fitted), &engine});
    });
    return made;
}

/// Of those that the curves alone do not rule out; the first of equals, and of none with an answer.
EngineGroup::Fastest EngineGroup::fastest(const std::vector<Fitted>& fitted, std::size_t anchor) {
    const std::vector<double> rough = rough_speeds(fitted, anchor);
    const double least = least_hopeful(rough);
    std::optional<Fastest> best;
    for (std::size_t i = 0; i < fitted.size(); ++i) {
        if (rough[i] < least) continue;
        solve::TopSpeed found = speed_of(fitted[i], anchor);
        if (best && !faster(found, best->found)) continue;
        best = {&fitted[i], std::move(found)};
        likely_ = i;
    }
    return *std::move(best);
}

/// By the curves alone, where there is something to choose; beginning with the one that was fastest
/// before, beside which the others are soon told to be slower.
std::vector<double> EngineGroup::rough_speeds(const std::vector<Fitted>& fitted,
                                              std::size_t anchor) {
    std::vector<double> rough(fitted.size(), 0);
    for (std::size_t k = 0; fitted.size() > 1 && k < fitted.size(); ++k) {
        const std::size_t i = (likely_ + k) % fitted.size();
        rough[i] = fitted[i].engine->rough_speed(fitted[i].vehicle, anchor, least_hopeful(rough));
    }
    return rough;
}

/// The points on the way are told of at the stated anchor alone.
solve::TopSpeed EngineGroup::speed_of(const Fitted& fitted, std::size_t anchor) {
    return anchor == middle ? fitted.engine->top_speed(fitted.vehicle, anchor)
                            : fitted.engine->brief_top_speed(fitted.vehicle, anchor);
}

FittedEngine& EngineGroup::engine(const Vehicle& fitted, UpgradeSet chosen,
                                  const Choices& choices) {
    auto& found = engines_[of_engine(scenario_.menu, chosen, choices)];
    if (!found) found = std::make_unique<FittedEngine>(fitted, scenario_, anchor_spread_);
    return *found;
}

}  // namespace windwall::study
