#include "windwall/scenario/apply.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

constexpr std::size_t most_parts = 64;

template <class List>
auto find_part(List& list, std::string_view id) {
    return std::ranges::find_if(list, [&](const auto& entry) { return entry.id == id; });
}

std::string quoted(std::string_view id) { return "\"" + std::string(id) + "\""; }

std::string absent(std::string_view id, const std::string& where) {
    return "there is no part " + quoted(id) + " in the " + where;
}

std::string place_name(const Part& part) {
    return std::holds_alternative<charge::Part>(part) ? "charge path" : "driveline";
}

std::string replace(vehicle::Vehicle& vehicle, const Replace& action) {
    return std::visit(
        [&](const auto& part) -> std::string {
            auto& list = list_of(vehicle, part);
            const auto old = find_part(list, action.id);
            if (old == list.end()) return absent(action.id, place_name(action.part));
            old->part = part;
            return {};
        },
        action.part);
}

template <class List>
bool take_out(List& list, std::string_view id) {
    return std::erase_if(list, [&](const auto& entry) { return entry.id == id; }) > 0;
}

// Two upgrades may take away the same part; it goes once.
std::string remove(vehicle::Vehicle& vehicle, const Remove& action,
                   std::vector<std::string_view>& gone) {
    if (std::ranges::find(gone, action.id) != gone.end()) return {};
    gone.push_back(action.id);
    if (take_out(vehicle.charge_path, action.id) || take_out(vehicle.driveline, action.id))
        return {};
    return absent(action.id, "vehicle");
}

std::string none_there(const Insert& action) {
    if (action.anchors.size() == 1)
        return absent(action.anchors.front(), place_name(action.part)) + " to put " +
               quoted(action.id) + " next to";
    return "none of the parts that " + quoted(action.id) + " could stand next to is in the " +
           place_name(action.part);
}

std::string insert(vehicle::Vehicle& vehicle, const Insert& action) {
    const bool taken = find_part(vehicle.charge_path, action.id) != vehicle.charge_path.end() ||
                       find_part(vehicle.driveline, action.id) != vehicle.driveline.end();
    if (taken) return "a part " + quoted(action.id) + " stands there already";
    return std::visit(
        [&](const auto& part) -> std::string {
            auto& list = list_of(vehicle, part);
            if (list.size() == most_parts) return "there are 64 parts already";
            for (const auto& anchor : action.anchors) {
                const auto found = find_part(list, anchor);
                if (found == list.end()) continue;
                list.insert(found + (action.after ? 1 : 0), {action.id, part});
                return {};
            }
            return none_there(action);
        },
        action.part);
}

void nothing_left(const vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                  Faults& faults) {
    if (!vehicle.charge_path.empty() && !vehicle.driveline.empty()) return;
    for (std::size_t at = menu.size(); at-- > 0;) {
        if (!holds(set, at) || menu[at].removes.empty()) continue;
        faults.push_back({at, Verb::remove, menu[at].removes.size() - 1,
                          std::string("no part is left in the ") +
                              (vehicle.charge_path.empty() ? "charge path" : "driveline")});
        return;
    }
}

// How many of these actions there are up to the last that brings a part of the charge path, or of
// the driveline; 0 where none does.
template <class Action>
std::size_t last_that_brings(const std::vector<Action>& actions, bool to_charge_path) {
    const auto last = std::find_if(actions.rbegin(), actions.rend(), [&](const Action& action) {
        return std::holds_alternative<charge::Part>(action.part) == to_charge_path;
    });
    return static_cast<std::size_t>(actions.rend() - last);
}

// The last part that was brought to where it is too much is the one too many.
void breaks_the_vehicle(const vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                        Faults& faults) {
    const auto broken = vehicle.check();
    if (!broken) return;
    const bool in_path = broken->key == "charge_path";
    for (std::size_t at = menu.size(); at-- > 0;) {
        const auto inserted = last_that_brings(menu[at].inserts, in_path);
        const auto replaced = last_that_brings(menu[at].replaces, in_path);
        if (!holds(set, at) || inserted + replaced == 0) continue;
        const auto verb = inserted ? Verb::insert : Verb::replace;
        faults.push_back({at, verb, (inserted ? inserted : replaced) - 1, broken->sentence});
        return;
    }
}

}  // namespace

void rearrange(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, Faults& faults) {
    std::vector<std::string_view> gone;
    const auto carry_out = [&](Verb verb, auto actions, auto&& act) {
        for (std::size_t at = 0; at < menu.size(); ++at) {
            if (!holds(set, at)) continue;
            const auto& list = menu[at].*actions;
            for (std::size_t action = 0; action < list.size(); ++action)
                if (auto why = act(list[action]); !why.empty())
                    faults.push_back({at, verb, action, std::move(why)});
        }
    };
    carry_out(Verb::replace, &Upgrade::replaces,
              [&](const Replace& action) { return replace(vehicle, action); });
    carry_out(Verb::remove, &Upgrade::removes,
              [&](const Remove& action) { return remove(vehicle, action, gone); });
    carry_out(Verb::insert, &Upgrade::inserts,
              [&](const Insert& action) { return insert(vehicle, action); });
    nothing_left(vehicle, menu, set, faults);
    breaks_the_vehicle(vehicle, menu, set, faults);
}

}  // namespace windwall::scenario
