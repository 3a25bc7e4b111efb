#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/scenario/apply.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

// Changes a number that is there.
template <class Change>
std::string change(const FieldPath& path, vehicle::Vehicle& vehicle, Change&& into) {
    const auto owner = path.owner(&vehicle, false);
    if (!owner) return owner.why;
    double* number = path.find(&vehicle);
    if (!number) return "\"" + path.text() + "\" is not stated, so it cannot be changed";
    *number = into(*number);
    return {};
}

std::string out_of_range(const FieldPath& path, const fields::Range& range,
                         const vehicle::Vehicle& vehicle) {
    const auto number = path.get(&vehicle);
    if (!number || fields::allowed(*number, path.row(), range)) return {};
    const auto& unit = fields::unit_of(path.row().measure);
    auto made = fields::readable_number(fields::from_si(*number, unit), 4);
    if (!unit.text.empty()) made += " " + std::string(unit.text);
    return path.text() + " would be " + made + ", outside " + fields::allowed_text(path.row());
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
    void check(Verb verb, std::vector<Action> Upgrade::*actions) {
        each(verb, actions, [&](const Action& action) -> std::string {
            if constexpr (requires { action.range; })
                if (auto why = out_of_range(action.path, action.range, vehicle_); !why.empty())
                    return why;
            return action.path.broken_rule(&vehicle_).value_or(std::string());
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

void change_values(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                   const Choices& chosen, Faults& faults) {
    Walk walk(vehicle, menu, set, faults);
    walk.each(Verb::set, &Upgrade::sets,
              [&](const Set& action) { return put(action.path, action.value, vehicle); });
    std::size_t choice = 0;
    walk.each(Verb::choose, &Upgrade::choices, [&](const Choose& action) {
        const auto pick = choice < chosen.size() ? chosen[choice] : 0;
        ++choice;
        return put(action.path, action.values[std::min(pick, action.values.size() - 1)], vehicle);
    });
    walk.each(Verb::scale, &Upgrade::scales, [&](const Scale& action) {
        return change(action.path, vehicle, [&](double number) { return number * action.factor; });
    });
    walk.each(Verb::add, &Upgrade::adds, [&](const Add& action) {
        return change(action.path, vehicle, [&](double number) { return number + action.amount; });
    });
    walk.check(Verb::set, &Upgrade::sets);
    walk.check(Verb::choose, &Upgrade::choices);
    walk.check(Verb::scale, &Upgrade::scales);
    walk.check(Verb::add, &Upgrade::adds);
}

}  // namespace windwall::scenario
