#include "windwall/scenario/torque_curve_conflicts.hpp"

#include <algorithm>

namespace windwall::scenario {
namespace {

constexpr std::string_view path_key = "charge_path";

bool changes_path(const Upgrade& upgrade, const vehicle::ChargePath& path) {
    const Overloaded changes{
        [&](const Remove& action) {
            return std::ranges::any_of(path, [&](const auto& it) { return it.id == action.id; });
        },
        [](const auto& action) {
            if constexpr (requires { action.part; })
                return list_key(action.part) == path_key;
            else
                return action.path.text().starts_with(path_key);
        },
    };
    return std::ranges::any_of(
        upgrade.actions, [&](const Action& action) { return std::visit(changes, action.what); });
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
