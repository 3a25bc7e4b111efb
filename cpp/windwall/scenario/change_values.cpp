#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/scenario/apply.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

// Changes a number that is there.
template <class Change>
std::string change(const Spot& spot, vehicle::Vehicle& vehicle, Change&& into) {
    const auto reached = tractive_state(spot, vehicle, false);
    if (!reached) return reached.why;
    double* number = number_in(spot, reached.owner);
    if (!number) return "\"" + spot.address + "\" is not stated, so it cannot be changed";
    *number = into(*number);
    return {};
}

std::string out_of_range(const Spot& spot, vehicle::Vehicle& vehicle) {
    const auto reached = tractive_state(spot, vehicle, false);
    const double* number = reached ? number_in(spot, reached.owner) : nullptr;
    if (!number || (*number >= spot.low && *number <= spot.high)) return {};
    const auto& unit = fields::unit_of(spot.row->measure);
    auto made = fields::readable_number(fields::from_si(*number, unit), 4);
    if (!unit.text.empty()) made += " " + std::string(unit.text);
    return spot.address + " would be " + made + ", outside " + fields::range_text(*spot.row);
}

// Goes through all actions of one verb of a set, in the order of the menu.
class Walk {
public:
    Walk(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, Faults& faults)
        : vehicle_(vehicle), menu_(menu), set_(set), faults_(faults) {}

    template <class Action, class Act>
    void each(Verb verb, std::vector<Action> Upgrade::*actions, Act&& act) {
        for (std::size_t at = 0; at < menu_.size(); ++at) {
            if (!holds(set_, at)) continue;
            const auto& list = menu_[at].*actions;
            for (std::size_t action = 0; action < list.size(); ++action)
                complain(at, verb, action, act(list[action]));
        }
    }

    template <class Action>
    void check(Verb verb, std::vector<Action> Upgrade::*actions, bool may_leave_range) {
        each(verb, actions, [&](const Action& action) -> std::string {
            if (may_leave_range)
                if (auto why = out_of_range(action.spot, vehicle_); !why.empty()) return why;
            return broken_rule(action.spot, vehicle_).value_or(std::string());
        });
    }

private:
    // One thing that is wrong may be met by several actions; it is said once.
    void complain(std::size_t upgrade, Verb verb, std::size_t action, std::string why) {
        const bool known =
            std::ranges::any_of(faults_, [&](const Fault& fault) { return fault.sentence == why; });
        if (!why.empty() && !known) faults_.push_back({upgrade, verb, action, std::move(why)});
    }

    vehicle::Vehicle& vehicle_;
    const Menu& menu_;
    UpgradeSet set_;
    Faults& faults_;
};

}  // namespace

void change_values(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set, const Picks& picks,
                   Faults& faults) {
    Walk walk(vehicle, menu, set, faults);
    walk.each(Verb::set, &Upgrade::sets,
              [&](const Set& action) { return put(action.spot, action.value, vehicle); });
    std::size_t choice = 0;
    walk.each(Verb::choose, &Upgrade::choices, [&](const Choose& action) {
        const auto pick = choice < picks.size() ? picks[choice] : 0;
        ++choice;
        return put(action.spot, action.values[std::min(pick, action.values.size() - 1)], vehicle);
    });
    walk.each(Verb::scale, &Upgrade::scales, [&](const Scale& action) {
        return change(action.spot, vehicle, [&](double number) { return number * action.factor; });
    });
    walk.each(Verb::add, &Upgrade::adds, [&](const Add& action) {
        return change(action.spot, vehicle, [&](double number) { return number + action.amount; });
    });
    walk.check(Verb::set, &Upgrade::sets, false);
    walk.check(Verb::choose, &Upgrade::choices, false);
    walk.check(Verb::scale, &Upgrade::scales, true);
    walk.check(Verb::add, &Upgrade::adds, true);
}

}  // namespace windwall::scenario
