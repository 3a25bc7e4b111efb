#include "windwall/scenario/physics_of_upgrade.hpp"

#include "windwall/fields/canonical.hpp"

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

// One upgrade, with the place of its notes.
struct Teller {
    const Upgrade& upgrade;
    const fields::Provenance& notes;

    std::string address(Verb verb, std::string_view action) const {
        return "upgrades/" + upgrade.id + "/" + std::string(name(verb)) + "/" + std::string(action);
    }

    Json number(double value, const std::string& at) const {
        const auto* note = notes.find(at);
        return {value, note ? note->sigma.value_or(0) : 0.0};
    }

    Json part(const Part& part, const std::string& at) const {
        return std::visit(
            [&](const auto& kinds) {
                return kinds.visit([&]<class T>(const T& made) {
                    auto physics = fields::physics_of(fields::group_type<T>, &made, notes, at);
                    physics["kind"] = T::kind;
                    return physics;
                });
            },
            part);
    }

    Json value(const FieldPath& path, const Value& value, const std::string& at) const {
        if (const auto* si = std::get_if<double>(&value)) return number(*si, at);
        if (const auto* word = std::get_if<Word>(&value))
            return path.row().member.choice->names[word->number];
        if (const auto* flag = std::get_if<bool>(&value)) return *flag;
        if (const auto* text = std::get_if<std::string>(&value)) return *text;
        if (const auto* columns = std::get_if<fields::Columns>(&value)) return columns->column;
        auto entries = Json::array();
        if (const auto* list = std::get_if<std::vector<double>>(&value))
            for (const double si : *list)
                entries.push_back(number(si, at + "/" + std::to_string(entries.size() + 1)));
        return std::holds_alternative<std::monostate>(value) ? Json() : entries;
    }

    Json choice(const Choose& action) const {
        auto values = Json::array();
        for (const auto& each : action.values)
            values.push_back(value(action.path, each,
                                   address(Verb::choose, action.path.text()) + "/" +
                                       std::to_string(values.size() + 1)));
        return values;
    }

    Json insert(const Insert& action) const {
        const auto at = address(Verb::insert, std::to_string(action.entry + 1)) + "/part";
        return {{action.after ? "after" : "before", action.anchors},
                {"id", action.id},
                {"part", part(action.part, at)}};
    }

    void parts(Json& into) const {
        auto &replaced = into["replace"] = Json::object(),
             &removed = into["remove"] = Json::array();
        auto inserted = Json::array();
        for (const auto& action : upgrade.replaces)
            replaced[action.id] = part(action.part, address(Verb::replace, action.id));
        for (const auto& action : upgrade.removes)
            removed.push_back(action.id);
        for (const auto& action : upgrade.inserts)
            inserted.push_back(insert(action));
        into["insert"] = std::move(inserted);
    }

    void changes(Json& into) const {
        auto set = Json::object(), choose = Json::object(), scale = Json::object(),
             add = Json::object();
        for (const auto& [path, to] : upgrade.sets)
            set[path.text()] = value(path, to, address(Verb::set, path.text()));
        for (const auto& action : upgrade.choices)
            choose[action.path.text()] = choice(action);
        for (const auto& [path, range, factor] : upgrade.scales)
            scale[path.text()] = number(factor, address(Verb::scale, path.text()));
        for (const auto& [path, range, amount] : upgrade.adds)
            add[path.text()] = number(amount, address(Verb::add, path.text()));
        into["set"] = std::move(set);
        into["choose"] = std::move(choose);
        into["scale"] = std::move(scale);
        into["add"] = std::move(add);
    }
};

}  // namespace

Json physics_of(const Upgrade& upgrade, const Menu& menu, const fields::Provenance& notes) {
    const Teller teller{upgrade, notes};
    auto physics = fields::physics_of(fields::group_type<Terms>, &upgrade.terms, notes,
                                      "upgrades/" + upgrade.id);
    physics["id"] = upgrade.id;
    physics["needs"] = ids_of(menu, upgrade.required);
    physics["bars"] = ids_of(menu, upgrade.excluded);
    teller.parts(physics);
    teller.changes(physics);
    return physics;
}

}  // namespace windwall::scenario
