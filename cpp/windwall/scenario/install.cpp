#include "windwall/scenario/install.hpp"

#include "windwall/scenario/apply_anchor_sigma.hpp"
#include "windwall/scenario/complete.hpp"
#include "windwall/scenario/installed_provenance.hpp"
#include "windwall/scenario/relations.hpp"

namespace windwall::scenario {
namespace {

std::string not_on_offer(const Menu& menu, UpgradeSet set, const Choices& chosen) {
    const auto beyond = menu.size() >= most_upgrades ? 0 : set >> menu.size();
    if (beyond != 0) return "the menu has only " + std::to_string(menu.size()) + " upgrades";
    if (chosen.empty()) return {};
    const auto open = open_choices(menu, set);
    if (chosen.size() > open.size())
        return "these upgrades leave only " + std::to_string(open.size()) + " choices open";
    for (std::size_t at = 0; at < chosen.size(); ++at)
        if (const auto values = open[at].choice->values.size(); chosen[at] >= values)
            return "choice " + std::to_string(at + 1) + " has only " + std::to_string(values) +
                   " values";
    return {};
}

}  // namespace

std::variant<vehicle::Vehicle, std::string> install(const Scenario& scenario, UpgradeSet set,
                                                    const Choices& chosen) {
    const auto& menu = scenario.menu;
    if (auto why = not_on_offer(menu, set, chosen); !why.empty()) return why;
    if (auto why = refusal(menu, set); !why.empty()) return why;
    Faults faults;
    auto vehicle = scenario.vehicle;
    rearrange(vehicle, menu, set, faults);
    if (faults.empty()) change_values(vehicle, menu, set, chosen, faults);
    if (!faults.empty())
        return "\"" + menu[faults.front().upgrade].id + "\": " + faults.front().sentence;
    complete_installed(scenario, vehicle, set);
    // Known to knock elsewhere, by another number or another ±.
    if (changes_value(menu, set, knock_anchor))
        apply_anchor_sigma(vehicle, installed_provenance(scenario, set, chosen));
    return vehicle;
}

}  // namespace windwall::scenario
