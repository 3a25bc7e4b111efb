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

// One thing that is wrong may be met by several actions; it is said once.
void complain(Faults& faults, std::size_t upgrade, std::size_t action, std::string why) {
    const bool known =
        std::ranges::any_of(faults, [&](const Fault& fault) { return fault.sentence == why; });
    if (!why.empty() && !known) faults.push_back({upgrade, action, std::move(why)});
}

// What is wrong with a value after all changes are done.
std::string wrong_with(const Action& action, const vehicle::Vehicle& vehicle) {
    return std::visit(
        [&](const auto& change) -> std::string {
            if constexpr (requires { change.range; })
                if (auto why = out_of_range(change.path, change.range, vehicle); !why.empty())
                    return why;
            if constexpr (requires { change.path; })
                return change.path.broken_rule(&vehicle).value_or(std::string());
            return {};
        },
        action.what);
}

}  // namespace

void change_values(vehicle::Vehicle& vehicle, const Menu& menu, UpgradeSet set,
                   const Choices& chosen, Faults& faults) {
    NextChoice next(chosen);
    const Overloaded act{
        [&](const Set& action) { return put(action.path, action.value, vehicle); },
        [&](const Choose& action) {
            return put(action.path, action.values[std::min(next(), action.values.size() - 1)],
                       vehicle);
        },
        [&](const Scale& action) {
            return change(action.path, vehicle, [&](double it) { return it * action.factor; });
        },
        [&](const Add& action) {
            return change(action.path, vehicle, [&](double it) { return it + action.amount; });
        },
        [](const auto&) { return std::string(); },
    };
    each_action(menu, set, [&](std::size_t at, std::size_t action) {
        complain(faults, at, action, std::visit(act, menu[at].actions[action].what));
    });
    each_action(menu, set, [&](std::size_t at, std::size_t action) {
        complain(faults, at, action, wrong_with(menu[at].actions[action], vehicle));
    });
}

}  // namespace windwall::scenario
