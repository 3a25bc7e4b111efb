#include "windwall/fields/plain_text.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/drop_impossible.hpp"
#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/installed_provenance.hpp"
#include "windwall/scenario/solve_rated.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

Loaded refused(std::string sentence) {
    Loaded made{.scenario = {}, .problems = {}, .file = "install"};
    made.problems.add("", {}, std::move(sentence));
    return made;
}

}  // namespace

fields::Expected<UpgradeSet> set_of(const Menu& menu, std::span<const std::string> ids) {
    UpgradeSet set = 0;
    for (const auto& id : ids) {
        const auto found = std::ranges::find(menu, id, &Upgrade::id);
        if (found == menu.end())
            return fields::Expected<UpgradeSet>::refused("there is no upgrade " +
                                                         fields::in_quotes(id));
        set |= only(static_cast<std::size_t>(found - menu.begin()));
    }
    return set;
}

Loaded fit(const Scenario& scenario, std::span<const std::string> ids, const Choices& chosen) {
    const auto set = set_of(scenario.menu, ids);
    if (!set) return refused(set.violation);
    if (*set != 0 && scenario.rated) {
        auto stock = scenario;
        keep_solved(stock);
        return fit(stock, ids, chosen);
    }
    auto vehicle = install(scenario, *set, chosen);
    if (auto* why = std::get_if<std::string>(&vehicle)) return refused(std::move(*why));
    Loaded made{.scenario = scenario, .problems = {}, .file = "install"};
    made.scenario->notes = installed_provenance(scenario, *set, chosen);
    made.scenario->vehicle = std::get<vehicle::Vehicle>(std::move(vehicle));
    complete(*made.scenario, made.scenario->notes);
    if (*set == 0) return made;
    made.scenario->observed.clear();
    made.scenario->observed_source.reset();
    drop_impossible_upgrades(*made.scenario, *set);
    drop_impossible_limits(*made.scenario);
    drop_impossible_correlations(*made.scenario);
    return made;
}

}  // namespace windwall::scenario
