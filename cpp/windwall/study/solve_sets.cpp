#include "windwall/study/solve_sets.hpp"

#include "windwall/scenario/install.hpp"
#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/point/guarded.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::study {
namespace {

using scenario::Scenario;
using scenario::UpgradeSet;
using vehicle::Vehicle;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

double speed_of(const Vehicle& vehicle) {
    const solve::TopSpeed found = solve::top_speed(vehicle);
    return found.outcome.answered() ? found.speed() : nan;
}

void add_terms(const Scenario& scenario, UpgradeSet set, SetResult& result) {
    for (std::size_t i = 0; i < scenario.menu.size(); ++i) {
        if (!scenario::holds(set, i)) continue;
        result.upgrades.push_back(scenario.menu[i].id);
        result.cost += scenario.menu[i].terms.cost.value_or(0);
        result.hours += scenario.menu[i].terms.hours.value_or(0);
    }
}

void refuse(const solve::TopSpeed& found, SetResult& result) {
    result.refused_for = Refusal::no_answer;
    result.unanswered = solve::unanswered(found);
}

/// At the stated anchor, with every limit looked at on the way up.
void solve_stated(const Vehicle& vehicle, const Scenario& scenario, SetResult& result) {
    solve::LimitWatch watch(vehicle, scenario.limits);
    const solve::TopSpeed found = solve::top_speed(
        vehicle, {}, [&](const vehicle::Balance& balance, solve::FullThrottlePoint& full_throttle) {
            watch.read(balance, full_throttle, full_throttle.watched);
        });
    result.answered = found.outcome.answered();
    if (!result.answered) return refuse(found, result);
    result.speed[middle] = found.speed();
    result.least_margin = solve::least_margin(found);
    result.passed = solve::passed_limits(found, watch);
    result.recommended = result.passed.empty();
    if (!result.recommended) result.refused_for = Refusal::passes_limit;
}

SetResult unsolved(const Scenario& scenario, const Considered& considered, Set set) {
    SetResult result;
    result.set = set;
    result.speed.fill(nan);
    add_terms(scenario, in_menu(considered, set), result);
    return result;
}

SetResult broken(SetResult result) {
    refuse({.outcome = solve::broken_off}, result);
    return result;
}

SetResult solve_set(const Scenario& scenario, UpgradeSet chosen, double spread, SetResult result) {
    result.picks = scenario::resolve_choice(scenario, chosen, speed_of);
    const auto fitted = scenario::install(scenario, chosen, result.picks);
    if (const auto* refusal = std::get_if<std::string>(&fitted)) {
        result.refused_for = Refusal::not_installable;
        result.refusal = *refusal;
        return result;
    }
    const Vehicle& vehicle = std::get<Vehicle>(fitted);
    solve_stated(vehicle, scenario, result);
    result.speed.front() = speed_of(at_anchor(vehicle, -spread));
    result.speed.back() = speed_of(at_anchor(vehicle, spread));
    return result;
}

bool asked_for(const scenario::Upgrade& upgrade, const RankOptions& options) {
    return !options.upgrades || std::find(options.upgrades->begin(), options.upgrades->end(),
                                          upgrade.id) != options.upgrades->end();
}

}  // namespace

Considered consider(const Scenario& scenario, const RankOptions& options) {
    UpgradeSet asked = 0;
    for (std::size_t i = 0; i < scenario.menu.size(); ++i) {
        if (asked_for(scenario.menu[i], options)) asked |= scenario::only(i);
    }
    Considered considered;
    for (std::size_t i = 0; i < scenario.menu.size(); ++i) {
        const bool complete = (scenario.menu[i].required & ~asked) == 0;
        if (scenario::holds(asked, i) && complete) considered.upgrades.push_back(i);
    }
    const auto narrowed = [&](UpgradeSet wide) {
        Set narrow = 0;
        for (std::size_t k = 0; k < considered.upgrades.size(); ++k) {
            if (scenario::holds(wide, considered.upgrades[k])) narrow |= only(k);
        }
        return narrow;
    };
    for (std::size_t i : considered.upgrades) {
        considered.relations.required.push_back(narrowed(scenario.menu[i].required));
        considered.relations.excluded.push_back(narrowed(scenario.menu[i].excluded));
    }
    return considered;
}

UpgradeSet in_menu(const Considered& considered, Set set) {
    UpgradeSet wide = 0;
    for (std::size_t k = 0; k < considered.upgrades.size(); ++k) {
        if (holds(set, k)) wide |= scenario::only(considered.upgrades[k]);
    }
    return wide;
}

Vehicle at_anchor(Vehicle vehicle, double octane_shift) {
    std::visit(
        [&]<class Engine>(Engine& engine) {
            if constexpr (engine::Anchored<Engine>)
                engine.knock_anchor.octane_number += octane_shift;
        },
        vehicle.engine.value);
    return vehicle;
}

std::vector<SetResult> solve_sets(const Scenario& scenario, const Considered& considered,
                                  const RankOptions& options) {
    const std::vector<Set> sets = allowed_sets(considered.relations);
    std::vector<SetResult> results(sets.size());
    std::vector<char> done(sets.size());
    run_batch(
        sets.size(),
        [&] {
            return [&](std::size_t i) {
                const SetResult empty = unsolved(scenario, considered, sets[i]);
                const auto chosen = in_menu(considered, sets[i]);
                results[i] = solve::guarded(
                    [&] { return solve_set(scenario, chosen, options.anchor_spread, empty); },
                    [&] { return broken(empty); });
                done[i] = 1;
            };
        },
        options.batch);
    std::vector<SetResult> kept;
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (done[i]) kept.push_back(std::move(results[i]));
    }
    return kept;
}

}  // namespace windwall::study
