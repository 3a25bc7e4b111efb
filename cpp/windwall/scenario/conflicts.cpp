#include "windwall/scenario/conflicts.hpp"

#include "windwall/scenario/relations.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

std::string quoted(std::string_view id) { return "\"" + std::string(id) + "\""; }

class Pair {
public:
    Pair(const Menu& menu, std::size_t earlier, std::size_t later,
         const ConflictComplaint& complain)
        : earlier_(menu[earlier]), later_(menu[later]), at_(later), complain_(complain) {}

    void compare() const {
        same_values(Verb::set, later_.sets);
        same_values(Verb::choose, later_.choices);
        same_ids(Verb::replace, later_.replaces, earlier_.replaces, "replaces");
        same_ids(Verb::insert, later_.inserts, earlier_.inserts, "inserts");
        reach_into_removed();
        remove_what_is_used();
    }

private:
    void complain(Verb verb, std::size_t action, std::string why) const {
        complain_(at_, verb, action, why + "; if they never go together, say so with \"excludes\"");
    }

    template <class Action>
    void same_values(Verb verb, const std::vector<Action>& actions) const {
        for (std::size_t action = 0; action < actions.size(); ++action) {
            const auto& path = actions[action].path;
            const auto same = [&](const auto& other) { return overlap(other.path, path); };
            if (std::ranges::any_of(earlier_.sets, same) ||
                std::ranges::any_of(earlier_.choices, same))
                complain(verb, action,
                         quoted(earlier_.id) + " sets this too, and only one of both could count");
        }
    }

    template <class Action>
    void same_ids(Verb verb, const std::vector<Action>& actions, const std::vector<Action>& others,
                  std::string_view does) const {
        for (std::size_t action = 0; action < actions.size(); ++action)
            if (std::ranges::find(others, actions[action].id, &Action::id) != others.end())
                complain(verb, action,
                         quoted(earlier_.id) + " " + std::string(does) + " this part too");
    }

    bool removed(std::string_view id) const {
        return !id.empty() &&
               std::ranges::find(earlier_.removes, id, &Remove::id) != earlier_.removes.end();
    }

    template <class Action>
    void into_removed(Verb verb, const std::vector<Action>& actions, auto&& id_of) const {
        for (std::size_t action = 0; action < actions.size(); ++action)
            if (removed(id_of(actions[action])))
                complain(verb, action,
                         quoted(earlier_.id) + " removes the part that this reaches into");
    }

    void reach_into_removed() const {
        const auto part = [](const auto& action) { return action.path.part(); };
        into_removed(Verb::replace, later_.replaces,
                     [](const Replace& action) { return std::string_view(action.id); });
        into_removed(Verb::set, later_.sets, part);
        into_removed(Verb::choose, later_.choices, part);
        into_removed(Verb::scale, later_.scales, part);
        into_removed(Verb::add, later_.adds, part);
    }

    bool uses(std::string_view id) const {
        const auto inside = [&](const auto& action) { return action.path.part() == id; };
        return std::ranges::find(earlier_.replaces, id, &Replace::id) != earlier_.replaces.end() ||
               std::ranges::any_of(earlier_.sets, inside) ||
               std::ranges::any_of(earlier_.choices, inside) ||
               std::ranges::any_of(earlier_.scales, inside) ||
               std::ranges::any_of(earlier_.adds, inside);
    }

    void remove_what_is_used() const {
        for (std::size_t action = 0; action < later_.removes.size(); ++action)
            if (uses(later_.removes[action].id))
                complain(Verb::remove, action, quoted(earlier_.id) + " reaches into this part");
    }

    const Upgrade& earlier_;
    const Upgrade& later_;
    std::size_t at_;
    const ConflictComplaint& complain_;
};

}  // namespace

void find_conflicts(const Menu& menu, const ConflictComplaint& complain) {
    for (std::size_t later = 1; later < menu.size(); ++later)
        for (std::size_t earlier = 0; earlier < later; ++earlier)
            if (refusal(menu, with_required(menu, earlier) | with_required(menu, later)).empty())
                Pair(menu, earlier, later, complain).compare();
}

}  // namespace windwall::scenario
