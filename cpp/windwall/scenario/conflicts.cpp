#include "windwall/scenario/conflicts.hpp"

#include "windwall/scenario/relations.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

std::string quoted(std::string_view id) { return "\"" + std::string(id) + "\""; }

bool decides(const Action& action) { return action.as<Set>() || action.as<Choose>(); }

// The part that an action replaces or reaches into, or nothing.
std::string_view reached_part(const Action& action) {
    if (const auto* replace = action.as<Replace>()) return replace->id;
    return action.path() ? action.path()->part() : std::string_view();
}

template <class T>
bool both(const Action& one, const Action& other) {
    return one.as<T>() && other.as<T>() && one.as<T>()->id == other.as<T>()->id;
}

bool removes(const Action& action, std::string_view id) {
    const auto* remove = action.as<Remove>();
    return remove && !id.empty() && remove->id == id;
}

// What the earlier of two actions does so that the later cannot count, or nothing.
std::string_view conflict(const Action& earlier, const Action& later) {
    if (decides(earlier) && decides(later) && overlap(*earlier.path(), *later.path()))
        return " sets this too, and only one of both could count";
    if (both<Replace>(earlier, later)) return " replaces this part too";
    if (both<Insert>(earlier, later)) return " inserts this part too";
    if (removes(earlier, reached_part(later))) return " removes the part that this reaches into";
    if (removes(later, reached_part(earlier))) return " reaches into this part";
    return {};
}

void compare(const Menu& menu, std::size_t earlier, std::size_t later, Faults& faults) {
    const auto& actions = menu[later].actions;
    for (std::size_t at = 0; at < actions.size(); ++at)
        for (const auto& other : menu[earlier].actions) {
            const auto why = conflict(other, actions[at]);
            if (why.empty()) continue;
            faults.push_back({later, at,
                              quoted(menu[earlier].id) + std::string(why) +
                                  "; if they never go together, say so with \"excludes\""});
            break;
        }
}

}  // namespace

Faults find_conflicts(const Menu& menu) {
    Faults faults;
    for (std::size_t later = 1; later < menu.size(); ++later)
        for (std::size_t earlier = 0; earlier < later; ++earlier) {
            if (faults.size() > fields::Problems::most) return faults;
            if (refusal(menu, with_required(menu, earlier) | with_required(menu, later)).empty())
                compare(menu, earlier, later, faults);
        }
    return faults;
}

}  // namespace windwall::scenario
