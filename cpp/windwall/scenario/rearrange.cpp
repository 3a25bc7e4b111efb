#include "windwall/scenario/apply.hpp"

#include <algorithm>
#include <optional>

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

// The last action of a set that is one of those looked for, to be blamed for what came of all.
template <class IsIt>
void blame_the_last(const Menu& menu, UpgradeSet set, const std::string& why, IsIt&& is_it,
                    Faults& faults) {
    std::optional<Fault> last;
    each_action(menu, set, [&](std::size_t at, std::size_t action) {
        const bool later = !last || at >= last->upgrade;
        if (later && is_it(menu[at].actions[action])) last = Fault{at, action, why};
    });
    if (last) faults.push_back(*std::move(last));
}

void nothing_left(const vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                  Faults& faults) {
    if (!vehicle.charge_path.empty() && !vehicle.driveline.empty()) return;
    const std::string where = vehicle.charge_path.empty() ? "charge path" : "driveline";
    blame_the_last(
        menu, set, "no part is left in the " + where,
        [](const Action& action) { return action.as<Remove>() != nullptr; }, faults);
}

// Whether a complaint about a list is about the value at an address inside it.
bool names(const fields::Violation& broken, const std::string& address) {
    return fields::is_within(address, broken.key) &&
           broken.sentence.find(address.substr(broken.key.size() + 1)) != std::string::npos;
}

// Whether an action may have done what a vehicle complains of: it brought a part into the list that
// is spoken of, gave the value that is, or took away the part that is missed.
bool may_have_done(const Action& action, const fields::Violation& broken) {
    return std::visit(
        [&](const auto& does) {
            if constexpr (requires { does.part; })
                return fields::is_within(broken.key, list_key(does.part));
            else if constexpr (requires { does.path; })
                return names(broken, does.path.text());
            else
                return broken.sentence.find(quoted(does.id)) != std::string::npos;
        },
        action.what);
}

// The last part that was brought to where it is too much is the one too many.
void breaks_the_vehicle(const vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                        Faults& faults) {
    const auto broken = vehicle.check();
    if (!broken) return;
    const auto did = [&](const Action& action) { return may_have_done(action, *broken); };
    blame_the_last(menu, set, broken->sentence, did, faults);
}

}  // namespace

void rearrange(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, Faults& faults) {
    std::vector<std::string_view> gone;
    const Overloaded act{
        [&](const Replace& action) { return replace(vehicle, action); },
        [&](const Remove& action) { return remove(vehicle, action, gone); },
        [&](const Insert& action) { return insert(vehicle, action); },
        [](const auto&) { return std::string(); },
    };
    each_action(menu, set, [&](std::size_t at, std::size_t action) {
        if (auto why = std::visit(act, menu[at].actions[action].what); !why.empty())
            faults.push_back({at, action, std::move(why)});
    });
    nothing_left(vehicle, menu, set, faults);
    breaks_the_vehicle(vehicle, menu, set, faults);
}

}  // namespace windwall::scenario
