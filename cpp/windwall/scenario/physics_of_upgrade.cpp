#include "windwall/scenario/physics_of_upgrade.hpp"

#include "windwall/fields/physics_of.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Json;

Json ids_of(const Menu& menu, UpgradeSet set) {
    auto ids = Json::array();
    for (std::size_t at = 0; at < menu.size(); ++at)
        if (holds(set, at)) ids.push_back(menu[at].id);
    return ids;
}

// Tells what each action does, as numbers with the sigma that is noted at its address.
struct Teller {
    const fields::Provenance& notes;
    std::string at;  // the address of the action

    Json number(double value, const std::string& address) const {
        const auto* note = notes.find(address);
        return {value, note ? note->sigma.value_or(0) : 0.0};
    }

    Json part(const Part& part, const std::string& address) const {
        return std::visit(
            [&](const auto& kinds) {
                return kinds.visit([&]<class T>(const T& made) {
                    auto physics = fields::physics_of(fields::group_type<T>, &made, notes, address);
                    physics["kind"] = T::kind;
                    return physics;
                });
            },
            part);
    }

    Json value(const FieldPath& path, const Value& value, const std::string& address) const {
        if (const auto* si = std::get_if<double>(&value)) return number(*si, address);
        if (const auto* word = std::get_if<Word>(&value))
            return path.row().member.choice->names[word->number];
        if (const auto* flag = std::get_if<bool>(&value)) return *flag;
        if (const auto* text = std::get_if<std::string>(&value)) return *text;
        if (const auto* columns = std::get_if<fields::Columns>(&value)) return columns->column;
        auto entries = Json::array();
        if (const auto* list = std::get_if<std::vector<double>>(&value))
            for (const double si : *list)
                entries.push_back(number(si, address + "/" + std::to_string(entries.size() + 1)));
        return std::holds_alternative<std::monostate>(value) ? Json() : entries;
    }

    Json operator()(const Replace& action) const { return part(action.part, at); }
    Json operator()(const Remove& action) const { return action.id; }
    Json operator()(const Insert& action) const {
        return {{action.after ? "after" : "before", action.anchors},
                {"id", action.id},
                {"part", part(action.part, at + "/part")}};
    }
    Json operator()(const Set& action) const { return value(action.path, action.value, at); }
    Json operator()(const Choose& action) const {
        auto values = Json::array();
        for (const auto& each : action.values)
            values.push_back(
                value(action.path, each, at + "/" + std::to_string(values.size() + 1)));
        return values;
    }
    Json operator()(const Scale& action) const { return number(action.factor, at); }
    Json operator()(const Add& action) const { return number(action.amount, at); }
};

// What is removed and inserted has an order; everything else goes by its key.
void tell_actions(const Upgrade& upgrade, const fields::Provenance& notes, Json& into) {
    for (const auto* list : {"remove", "insert"})
        into[list] = Json::array();
    for (const auto* object : {"replace", "set", "choose", "scale", "add"})
        into[object] = Json::object();
    for (const auto& action : upgrade.actions) {
        const Teller teller{notes, "upgrades/" + upgrade.id + "/" + action.address()};
        auto told = std::visit(teller, action.what);
        auto& verb = into[std::string(verb_name(action.verb()))];
        if (verb.is_array())
            verb.push_back(std::move(told));
        else
            verb[action.key] = std::move(told);
    }
}

}  // namespace

Json physics_of(const Upgrade& upgrade, const Menu& menu, const fields::Provenance& notes) {
    auto physics = fields::physics_of(fields::group_type<Terms>, &upgrade.terms, notes,
                                      "upgrades/" + upgrade.id);
    physics["id"] = upgrade.id;
    physics["needs"] = ids_of(menu, upgrade.required);
    physics["bars"] = ids_of(menu, upgrade.excluded);
    tell_actions(upgrade, notes, physics);
    return physics;
}

}  // namespace windwall::scenario
