#include "windwall/scenario/torque_curve_conflicts.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

constexpr std::string_view path_key = "charge_path";

bool in_path(const Part& part) { return list_key(part) == path_key; }
bool in_path(const FieldPath& input) { return input.text().starts_with(path_key); }

bool changes_path(const Upgrade& upgrade, const vehicle::ChargePath& path) {
    const auto of_path = [&](const std::string& id) {
        return std::any_of(path.begin(), path.end(),
                           [&](const auto& entry) { return entry.id == id; });
    };
    const auto any = [](const auto& actions, const auto& description) {
        return std::any_of(actions.begin(), actions.end(), description);
    };
    const auto part = [](const auto& action) { return in_path(action.part); };
    const auto input = [](const auto& action) { return in_path(action.path); };
    return any(upgrade.replaces, part) || any(upgrade.inserts, part) ||
           any(upgrade.removes, [&](const Remove& action) { return of_path(action.id); }) ||
           any(upgrade.sets, input) || any(upgrade.choices, input) || any(upgrade.scales, input) ||
           any(upgrade.adds, input);
}

}  // namespace

void find_torque_curve_conflicts(const vehicle::Vehicle& vehicle, const Menu& menu,
                                 const fields::Cursor& root) {
    if (!vehicle.engine.as<engine::TorqueCurve>()) return;
    for (std::size_t i = 0; i < vehicle.charge_path.size(); ++i) {
        const auto& entry = vehicle.charge_path[i];
        entry.part.visit([&]<class P>(const P&) {
            if constexpr (charge::Driven<P>) {
                root[path_key].entry(i).known_as(entry.id).complain(
                    "a torque curve holds what its own charge path gave; it cannot answer what a "
                    "blower does. State the engine as a cylinder, or leave the blower that was "
                    "measured out");
            }
        });
    }
    for (std::size_t i = 0; i < menu.size(); ++i) {
        if (!changes_path(menu[i], vehicle.charge_path)) continue;
        root["upgrades"]
            .entry(i)
            .known_as(menu[i].id)
            .complain(
                "a torque curve holds what its own charge path gave; it cannot answer what another "
                "one does. State the engine as a cylinder");
    }
}

}  // namespace windwall::scenario
