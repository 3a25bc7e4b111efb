#include "windwall/scenario/install.hpp"

#include "windwall/scenario/relations.hpp"

#include <limits>

namespace windwall::scenario {
namespace {

// The next combination, as an odometer counts; false after the last.
bool advance(Choices& chosen, const std::vector<std::size_t>& counts) {
    for (std::size_t at = chosen.size(); at-- > 0;) {
        if (++chosen[at] < counts[at]) return true;
        chosen[at] = 0;
    }
    return false;
}

std::string not_on_offer(const Menu& menu, UpgradeSet set, const Choices& chosen) {
    const auto beyond = menu.size() >= most_upgrades ? 0 : set >> menu.size();
    if (beyond != 0) return "the menu has only " + std::to_string(menu.size()) + " upgrades";
    if (chosen.empty()) return {};
    const auto counts = open_choices(menu, set);
    if (chosen.size() > counts.size())
        return "these upgrades leave only " + std::to_string(counts.size()) + " choices open";
    for (std::size_t at = 0; at < chosen.size(); ++at)
        if (chosen[at] >= counts[at])
            return "choice " + std::to_string(at + 1) + " has only " + std::to_string(counts[at]) +
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
    if (faults.empty()) return vehicle;
    return "\"" + menu[faults.front().upgrade].id + "\": " + faults.front().sentence;
}

std::vector<std::size_t> open_choices(const Menu& menu, UpgradeSet set) {
    std::vector<std::size_t> counts;
    for (std::size_t at = 0; at < menu.size(); ++at)
        if (holds(set, at))
            for (const auto* choice : menu[at].choices())
                counts.push_back(choice->values.size());
    return counts;
}

Choices resolve_choice(const Scenario& scenario, UpgradeSet set, const ChoiceSpeed& speed) {
    const auto counts = open_choices(scenario.menu, set);
    Choices chosen(counts.size(), 0);
    auto best = chosen;
    double fastest = -std::numeric_limits<double>::infinity();
    do {
        const auto made = install(scenario, set, chosen);
        const auto* vehicle = std::get_if<vehicle::Vehicle>(&made);
        const double found = vehicle ? speed(*vehicle, chosen) : fastest;
        if (found > fastest) {
            fastest = found;
            best = chosen;
        }
    } while (advance(chosen, counts));
    return best;
}

}  // namespace windwall::scenario
