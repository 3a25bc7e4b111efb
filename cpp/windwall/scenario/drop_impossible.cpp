#include "windwall/scenario/drop_impossible.hpp"

#include "windwall/scenario/currency.hpp"
#include "windwall/scenario/install.hpp"
#include "windwall/scenario/relations.hpp"
#include "windwall/scenario/result_address.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::scenario {
namespace {

// A set together with everything that requires one of it.
UpgradeSet with_dependants(const Menu& menu, UpgradeSet set) {
    for (std::size_t at = 0; at < menu.size(); ++at)
        if ((menu[at].required & set) != 0) set |= only(at);
    return set;
}

UpgradeSet barred(const Menu& menu, UpgradeSet fitted) {
    UpgradeSet set = 0;
    for (std::size_t at = 0; at < menu.size(); ++at)
        if ((menu[at].excluded & fitted) != 0) set |= only(at);
    return with_dependants(menu, set);
}

UpgradeSet impossible(const Scenario& scenario) {
    UpgradeSet set = 0;
    for (std::size_t at = 0; at < scenario.menu.size(); ++at)
        if (std::holds_alternative<std::string>(
                install(scenario, with_required(scenario.menu, at))))
            set |= only(at);
    return with_dependants(scenario.menu, set);
}

void forget(Upgrade& upgrade, std::vector<std::string> Upgrade::*ids, const std::string& key,
            const std::vector<std::string>& gone) {
    const auto is_gone = [&](const std::string& id) {
        return std::ranges::find(gone, id) != gone.end();
    };
    if (std::erase_if(upgrade.*ids, is_gone) == 0) return;
    auto source = *upgrade.source;
    source[key] = upgrade.*ids;
    if ((upgrade.*ids).empty()) source.erase(key);
    upgrade.source = std::make_shared<const fields::Json>(std::move(source));
}

void drop(Scenario& scenario, UpgradeSet set) {
    Menu kept;
    std::vector<std::string> gone;
    for (std::size_t at = 0; at < scenario.menu.size(); ++at) {
        auto& upgrade = scenario.menu[at];
        if (holds(set, at)) {
            scenario.notes.erase("upgrades/" + upgrade.id);
            gone.push_back(upgrade.id);
        } else {
            kept.push_back(std::move(upgrade));
        }
    }
    for (auto& upgrade : kept) {
        forget(upgrade, &Upgrade::required_ids, "requires", gone);
        forget(upgrade, &Upgrade::excluded_ids, "excludes", gone);
    }
    scenario.menu = std::move(kept);
    relate(scenario.menu);
}

}  // namespace

void drop_impossible_upgrades(Scenario& scenario, UpgradeSet fitted) {
    drop(scenario, fitted | barred(scenario.menu, fitted));
    while (const auto set = impossible(scenario))
        drop(scenario, set);
    scenario.currency = currency_left(scenario);
}

void drop_impossible_limits(Scenario& scenario) {
    Results results;
    collect_results(scenario.vehicle, results);
    for (std::size_t at = 0; at < scenario.menu.size(); ++at) {
        const auto made = install(scenario, with_required(scenario.menu, at));
        if (const auto* vehicle = std::get_if<vehicle::Vehicle>(&made))
            collect_results(*vehicle, results);
    }
    const auto is_gone = [&](const solve::Limit& limit) {
        return !results.contains(limit.address);
    };
    if (std::ranges::none_of(scenario.limits, is_gone)) return;
    auto source = *scenario.limits_source;
    for (const auto& limit : scenario.limits)
        if (is_gone(limit)) source.erase(limit.address);
    std::erase_if(scenario.limits, is_gone);
    scenario.limits_source = std::make_shared<const fields::Json>(std::move(source));
}

}  // namespace windwall::scenario
