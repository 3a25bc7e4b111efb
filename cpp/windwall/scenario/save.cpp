#include "windwall/scenario/save.hpp"

#include "windwall/fields/write.hpp"
#include "windwall/scenario/complete.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

void write_rows(fields::Json& root, const fields::GroupType& group, const void* from,
                const fields::Provenance& notes) {
    fields::Json written = fields::write(group, from, notes);  // items() borrows it
    for (auto& [key, value] : written.items())
        root[key] = std::move(value);
}

fields::Json upgrades(const Menu& menu) {
    auto list = fields::Json::array();
    for (const auto& upgrade : menu)
        list.push_back(*upgrade.source);
    return list;
}

}  // namespace

std::string save(const Scenario& scenario) {
    auto root = fields::Json::object();
    if (!scenario.schema.empty()) root["$schema"] = scenario.schema;
    root["format"] = current_format;
    write_rows(root, fields::group_type<Header>, &scenario.header, scenario.notes);
    const auto stated = as_stated(scenario);
    write_rows(root, fields::group_type<vehicle::Vehicle>, &stated, scenario.notes);
    if (scenario.limits_source) root["limits"] = *scenario.limits_source;
    if (scenario.correlations_source) root["correlations"] = *scenario.correlations_source;
    if (scenario.observed_source) root["observed"] = *scenario.observed_source;
    if (scenario.outings_source) root["outings"] = *scenario.outings_source;
    if (!scenario.menu.empty()) root["upgrades"] = upgrades(scenario.menu);
    return fields::pretty(root);
}

}  // namespace windwall::scenario
