#include "windwall/study/solve_sets.hpp"

#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/study/engine_group.hpp"

#include <algorithm>
#include <atomic>
#include <limits>
#include <map>

namespace windwall::study {
namespace {

using scenario::Scenario;
using scenario::UpgradeSet;
using vehicle::Vehicle;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr std::size_t most_together = 32;  // sets, beside which solving their engine is little

void add_terms(const Scenario& scenario, UpgradeSet set, SetResult& result) {
    for (std::size_t i = 0; i < scenario.menu.size(); ++i) {
        if (!scenario::holds(set, i)) continue;
        result.upgrades.push_back(scenario.menu[i].id);
        result.cost += scenario.menu[i].terms.cost.value_or(0);
        result.hours += scenario.menu[i].terms.hours.value_or(0);
    }
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

UpgradeSet changing_engine(const Scenario& scenario) {
    UpgradeSet set = 0;
    for (std::size_t i = 0; i < scenario.menu.size(); ++i)
        if (std::ranges::any_of(scenario.menu[i].actions, &scenario::Action::changes_engine))
            set |= scenario::only(i);
    return set;
}

/// The allowed sets as sets of the menu.
std::vector<UpgradeSet> sets_of_menu(const Considered& considered, const std::vector<Set>& sets) {
    std::vector<UpgradeSet> made;
    for (const Set set : sets)
        made.push_back(in_menu(considered, set));
    return made;
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

std::vector<std::vector<std::size_t>> by_engine(const Scenario& scenario,
                                                const std::vector<UpgradeSet>& sets) {
    const UpgradeSet of_engine = changing_engine(scenario);
    std::map<UpgradeSet, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < sets.size(); ++i)
        groups[sets[i] & of_engine].push_back(i);
    std::vector<std::vector<std::size_t>> made;
    for (const auto& [engine, members] : groups) {
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (i % most_together == 0) made.emplace_back();
            made.back().push_back(members[i]);
        }
    }
    return made;
}

std::vector<std::size_t> sizes_of_groups(const Scenario& scenario, const RankOptions& options) {
    const Considered considered = consider(scenario, options);
    std::vector<std::size_t> sizes;
    if (considered.upgrades.size() > most_ranked) return sizes;
    const auto sets = sets_of_menu(considered, allowed_sets(considered.relations));
    for (const auto& group : by_engine(scenario, sets))
        sizes.push_back(group.size());
    return sizes;
}

std::vector<SetResult> solve_sets(const Scenario& scenario, const Considered& considered,
                                  const RankOptions& options, const Groups& which) {
    const std::vector<Set> sets = allowed_sets(considered.relations);
    const std::vector<UpgradeSet> chosen_sets = sets_of_menu(considered, sets);
    const std::vector<std::vector<std::size_t>> groups = by_engine(scenario, chosen_sets);
    const std::size_t last = std::min(which.last, groups.size());
    std::vector<SetResult> results(sets.size());
    std::vector<char> done(sets.size());
    const double spread = scenario::anchor_spread(scenario.vehicle);
    std::atomic<std::size_t> solved = 0;
    std::atomic<bool> stopped = false;
    BatchOptions batch = options.batch;
    if (batch.progress)
        batch.progress = [&](std::size_t, std::size_t) {
            const bool goes_on = options.batch.progress(solved, sets.size());
            if (!goes_on) stopped = true;
            return goes_on;
        };
    run_batch(
        last - std::min(which.first, last),
        [&] {
            return [&](std::size_t item) {
                EngineGroup group(scenario, spread);
                for (const std::size_t i : groups[which.first + item]) {
                    if (stopped) return;
                    const SetResult empty = unsolved(scenario, considered, sets[i]);
                    results[i] = solve::guarded([&] { return group.solve(chosen_sets[i], empty); },
                                                [&] { return broken(empty); });
                    done[i] = 1;
                    ++solved;
                }
            };
        },
        batch);
    std::vector<SetResult> kept;
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (done[i]) kept.push_back(std::move(results[i]));
    }
    return kept;
}

}  // namespace windwall::study
