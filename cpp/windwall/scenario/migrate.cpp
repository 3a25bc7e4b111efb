#include "windwall/scenario/migrate.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Json;

/// Until the second version the switch of a pump read at its nozzle: so it still does in a file
/// from then.
void reads_at_its_nozzle(Json& part, const Json& id) {
    if (!part.is_object() || !part.contains("starts_at")) return;
    if (part.value("kind", Json()) == "evaporative_injection") part["starts_where"] = id;
}

void reads_at_its_nozzle(Json& changes) {
    constexpr std::string_view list = "charge_path/", key = "/starts_at";
    if (!changes.is_object()) return;
    Json more = Json::object();
    for (const auto& [address, value] : changes.items()) {
        if (!address.starts_with(list) || !address.ends_with(key)) continue;
        const auto part = address.substr(0, address.size() - key.size());
        more[part + "/starts_where"] = part.substr(list.size());
    }
    changes.update(more);
}

template <class Visit>
void each_in(Json& holder, const char* key, Visit&& visit) {
    if (!holder.is_object() || !holder.contains(key) || !holder[key].is_array()) return;
    for (Json& each : holder[key])
        visit(each);
}

void keep_switches_at_nozzles(Json& root) {
    const auto keep = [](Json& part) {
        if (part.is_object() && part.contains("id")) reads_at_its_nozzle(part, part["id"]);
    };
    each_in(root, "charge_path", keep);
    each_in(root, "upgrades", [&](Json& upgrade) {
        each_in(upgrade, "insert", [&](Json& insert) {
            if (insert.is_object() && insert.contains("part")) keep(insert["part"]);
        });
        if (!upgrade.is_object()) return;
        if (upgrade.contains("replace") && upgrade["replace"].is_object())
            for (const auto& [id, part] : upgrade["replace"].items())
                reads_at_its_nozzle(part, id);
        if (upgrade.contains("set")) reads_at_its_nozzle(upgrade["set"]);
    });
}

constexpr Migration steps_so_far[] = {
    {"windwall-scenario/1", "windwall-scenario/2", keep_switches_at_nozzles},
};

}  // namespace

std::span<const Migration> migrations() { return steps_so_far; }

std::optional<fields::Json> migrate(fields::Json root, std::span<const Migration> steps,
                                    std::string_view target) {
    for (const auto& step : steps) {
        if (root["format"] != step.from) continue;
        step.change(root);
        root["format"] = step.to;
    }
    if (root["format"] != target) return std::nullopt;
    return root;
}

}  // namespace windwall::scenario
