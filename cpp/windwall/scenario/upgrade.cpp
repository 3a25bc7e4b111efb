#include "windwall/scenario/upgrade.hpp"

#include <array>

namespace windwall::scenario {

std::string_view verb_name(std::size_t verb) {
    static constexpr std::array<std::string_view, 7> names{"replace", "remove", "insert", "set",
                                                           "choose",  "scale",  "add"};
    return names.at(verb);
}

const FieldPath* Action::path() const noexcept {
    return std::visit(
        [](const auto& action) -> const FieldPath* {
            if constexpr (requires { action.path; }) return &action.path;
            return nullptr;
        },
        what);
}

bool is_of_engine(const FieldPath& path) noexcept {
    if (path.row().is_rating()) return true;
    return !path.text().starts_with("body/") && !path.text().starts_with("driveline/");
}

bool Action::changes_engine() const noexcept {
    const FieldPath* changed = path();
    return changed == nullptr || is_of_engine(*changed);
}

std::string Action::address() const { return std::string(verb_name(verb())) + "/" + key; }

std::vector<const Choose*> Upgrade::choices() const {
    std::vector<const Choose*> all;
    for (const auto& action : actions)
        if (const auto* choice = action.as<Choose>()) all.push_back(choice);
    return all;
}

std::span<const fields::Row> Terms::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        text("title", at<&Terms::title>, "What the upgrade is called in tables and plots"),
        optional("cost", "", at<&Terms::cost>, money("EUR"), {0, 1e7},
                 "What it costs; one currency in one file"),
        optional("hours", "", at<&Terms::hours>, labour("h"), {0, 10000},
                 "How long it takes to fit"),
    };
    return table;
}

bool changes_value(const Menu& menu, UpgradeSet set, std::string_view address) {
    bool found = false;
    each_action(menu, set, [&](std::size_t at, std::size_t action) {
        const FieldPath* path = menu[at].actions[action].path();
        found = found || (path != nullptr && path->text() == address);
    });
    return found;
}

vehicle::ChargePath& list_of(vehicle::Vehicle& vehicle, const charge::Part&) {
    return vehicle.charge_path;
}

vehicle::Driveline& list_of(vehicle::Vehicle& vehicle, const driveline::Part&) {
    return vehicle.driveline;
}

std::string_view list_key(const Part& part) {
    return std::holds_alternative<charge::Part>(part) ? "charge_path" : "driveline";
}

}  // namespace windwall::scenario
