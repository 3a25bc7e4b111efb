#include "windwall/scenario/install.hpp"

#include "windwall/scenario/relations.hpp"

#include <limits>

namespace windwall::scenario {
namespace {

// The next combination, as an odometer counts; false after the last.
bool advance(Picks& picks, const std::vector<std::size_t>& counts) {
    for (std::size_t at = picks.size(); at-- > 0;) {
        if (++picks[at] < counts[at]) return true;
        picks[at] = 0;
    }
    return false;
}

std::string not_on_offer(const Menu& menu, UpgradeSet set, const Picks& picks) {
    const auto beyond = menu.size() >= most_upgrades ? 0 : set >> menu.size();
    if (beyond != 0) return "the menu has only " + std::to_string(menu.size()) + " upgrades";
    if (picks.empty()) return {};
    const auto counts = open_choices(menu, set);
    if (picks.size() > counts.size())
        return "these upgrades leave only " + std::to_string(counts.size()) + " choices open";
    for (std::size_t at = 0; at < picks.size(); ++at)
        if (picks[at] >= counts[at])
            return "choice " + std::to_string(at + 1) + " has only " + std::to_string(counts[at]) +
                   " values";
    return {};
}

}  // namespace

std::variant<vehicle::Vehicle, std::string> install(const Scenario& scenario, UpgradeSet set,
                                                    const Picks& picks) {
    const auto& menu = scenario.menu;
    if (auto why = not_on_offer(menu, set, picks); !why.empty()) return why;
    if (auto why = refusal(menu, set); !why.empty()) return why;
    Faults faults;
    auto vehicle = scenario.vehicle;
    rearrange(vehicle, menu, set, faults);
    if (faults.empty()) change_values(vehicle, menu, set, picks, faults);
    if (faults.empty()) return vehicle;
    return "\"" + menu[faults.front().upgrade].id + "\": " + faults.front().sentence;
}

std::vector<std::size_t> open_choices(const Menu& menu, UpgradeSet set) {
    std::vector<std::size_t> counts;
    for (std::size_t at = 0; at < menu.size(); ++at)
        if (holds(set, at))
            for (const auto& choice : menu[at].choices)
                counts.push_back(choice.values.size());
    return counts;
}

Picks resolve_choice(const Scenario& scenario, UpgradeSet set,
                     const std::function<double(const vehicle::Vehicle&)>& speed) {
    const auto counts = open_choices(scenario.menu, set);
    Picks picks(counts.size(), 0);
    auto best = picks;
    double fastest = -std::numeric_limits<double>::infinity();
    do {
        const auto made = install(scenario, set, picks);
        const auto* vehicle = std::get_if<vehicle::Vehicle>(&made);
        const double found = vehicle ? speed(*vehicle) : fastest;
        if (found > fastest) {
            fastest = found;
            best = picks;
        }
    } while (advance(picks, counts));
    return best;
}

}  // namespace windwall::scenario
