#include "windwall/scenario/physics.hpp"

#include "windwall/fields/physics_of.hpp"
#include "windwall/scenario/physics_of_upgrade.hpp"
#include "windwall/scenario/read_outings.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Json;

// Texts that say something of the vehicle, such as the size of a tyre.
void add_texts(Json& physics, const fields::GroupType& group, const void* object) {
    for (const auto& row : group.rows())
        if (row.member.type == fields::FieldType::text)
            physics[std::string(row.key)] = *static_cast<const std::string*>(row.member.of(object));
}

Json vehicle_of(const Scenario& scenario) {
    const auto& type = fields::group_type<vehicle::Vehicle>;
    const void* vehicle = &scenario.vehicle;
    auto physics = fields::physics_of(type, vehicle, scenario.notes);
    for (const auto& row : type.rows())
        if (row.member.type == fields::FieldType::group)
            add_texts(physics[std::string(row.key)], *row.member.group, row.member.of(vehicle));
    // A digest is that of the same file before there were budgets.
    if (!scenario.vehicle.goal.budget) physics["goal"].erase("budget");
    return physics;
}

Json limits_of(const Scenario& scenario) {
    const auto bound = [](const std::optional<double>& number) {
        return number ? Json(*number) : Json();
    };
    auto limits = Json::object();
    for (const auto& limit : scenario.limits)
        limits[limit.address] = {{"max", bound(limit.max)}, {"min", bound(limit.min)}};
    return limits;
}

Json observed_of(const Scenario& scenario) {
    auto list = Json::array();
    for (const auto& observation : scenario.observed)
        list.push_back(fields::physics_of(fields::group_type<Observation>, &observation,
                                          scenario.notes,
                                          "observed/" + std::to_string(list.size() + 1)));
    return list;
}

Json correlations_of(const Scenario& scenario) {
    auto list = Json::array();
    for (const auto& one : scenario.correlations)
        list.push_back({{"between", one.between}, {"correlation", one.correlation}});
    return list;
}

Json upgrades_of(const Scenario& scenario) {
    auto list = Json::array();
    for (const auto& upgrade : scenario.menu)
        list.push_back(physics_of(upgrade, scenario.menu, scenario.notes));
    return list;
}

}  // namespace

Json physics_of(const Scenario& scenario) {
    Json physics{{"format", current_format},      {"vehicle", vehicle_of(scenario)},
                 {"limits", limits_of(scenario)}, {"observed", observed_of(scenario)},
                 {"currency", scenario.currency}, {"upgrades", upgrades_of(scenario)}};
    if (!scenario.correlations.empty()) physics["correlations"] = correlations_of(scenario);
    if (!scenario.outings.empty())
        physics["outings"] = physics_of(scenario.outings, scenario.notes);
    return physics;
}

}  // namespace windwall::scenario
