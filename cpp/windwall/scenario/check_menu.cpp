#include "windwall/scenario/check_menu.hpp"

#include "windwall/scenario/apply.hpp"
#include "windwall/scenario/invalid_addresses.hpp"
#include "windwall/scenario/read_upgrade.hpp"
#include "windwall/scenario/relations.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

using fields::Cursor;

void decided_twice(const Upgrade& upgrade, const Cursor& cursor) {
    std::vector<const FieldPath*> seen;
    for (const auto& action : upgrade.actions) {
        if (!action.as<Set>() && !action.as<Choose>()) continue;
        const auto* path = action.path();
        if (std::ranges::any_of(seen, [&](auto* other) { return overlap(*other, *path); }))
            cursor_of(cursor, action).complain("this upgrade sets it twice");
        seen.push_back(path);
    }
}

// All values that the choices of one upgrade can take, each with the others at their first.
template <class Try>
void each_value(const Menu& menu, UpgradeSet set, std::size_t upgrade, Try&& attempt) {
    std::size_t before = 0;
    for (std::size_t at = 0; at < upgrade; ++at)
        if (holds(set, at)) before += menu[at].choices().size();
    attempt(Choices{});
    const auto choices = menu[upgrade].choices();
    for (std::size_t choice = 0; choice < choices.size(); ++choice) {
        Choices chosen(before + choice + 1, 0);
        for (chosen.back() = 1; chosen.back() < choices[choice]->values.size(); ++chosen.back())
            attempt(chosen);
    }
}

class Resolver {
public:
    Resolver(const Menu& menu, std::span<const Cursor> cursors,
             std::span<const vehicle::Vehicle> layouts)
        : menu_(menu), cursors_(cursors), layouts_(layouts) {}

    void check(std::size_t upgrade) {
        const auto set = with_required(menu_, upgrade);
        said_.clear();
        each_value(menu_, set, upgrade, [&](const Choices& chosen) {
            Faults faults;
            auto vehicle = layouts_[upgrade];
            change_values(vehicle, menu_, set, chosen, faults);
            for (const auto& fault : faults)
                complain(upgrade, fault);
        });
    }

private:
    void complain(std::size_t upgrade, const Fault& fault) {
        if (std::ranges::find(said_, fault.sentence) != said_.end()) return;
        said_.push_back(fault.sentence);
        if (fault.upgrade == upgrade)
            cursor_of(cursors_[upgrade], menu_[upgrade].actions[fault.action])
                .complain(fault.sentence);
        else
            cursors_[upgrade].complain("with what it requires, " + fault.sentence);
    }

    const Menu& menu_;
    std::span<const Cursor> cursors_;
    std::span<const vehicle::Vehicle> layouts_;
    std::vector<std::string> said_;
};

}  // namespace

void check_choices(const Menu& menu, std::span<const Cursor> cursors) {
    std::size_t combinations = 1;
    for (std::size_t at = 0; at < menu.size(); ++at) {
        decided_twice(menu[at], cursors[at]);
        for (const auto& action : menu[at].actions) {
            const auto* choice = action.as<Choose>();
            if (!choice) continue;
            combinations *= choice->values.size();
            if (combinations <= most_combinations) continue;
            cursor_of(cursors[at], action)
                .complain(
                    "with this one, the choices of all upgrades make more than 256 "
                    "combinations");
            return;
        }
    }
}

void check_resolved(const Menu& menu, std::span<const Cursor> cursors,
                    std::span<const vehicle::Vehicle> layouts) {
    if (menu.empty()) return;
    const InvalidAddresses invalid(cursors.front().findings().problems);
    std::vector<bool> sound;
    for (const auto& cursor : cursors)
        sound.push_back(!invalid.touches(cursor.address()));
    Resolver resolver(menu, cursors, layouts);
    for (std::size_t at = 0; at < menu.size(); ++at) {
        bool all = true;
        for (std::size_t other = 0; other < menu.size(); ++other)
            all = all && (!holds(with_required(menu, at), other) || sound[other]);
        if (all) resolver.check(at);
    }
}

}  // namespace windwall::scenario
