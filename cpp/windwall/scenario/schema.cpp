#include "windwall/scenario/schema.hpp"

#include "windwall/fields/schema.hpp"
#include "windwall/fields/write.hpp"
#include "windwall/scenario/check_menu.hpp"
#include "windwall/scenario/read_outings.hpp"
#include "windwall/scenario/scenario.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::Json;

Json object_of(const Json& values, std::string_view description) {
    return {{"type", "object"},
            {"description", description},
            {"maxProperties", 64},
            {"additionalProperties", values}};
}

Json list_of(const Json& entries, std::size_t least, std::size_t most,
             std::string_view description) {
    return {{"type", "array"},
            {"description", description},
            {"items", entries},
            {"minItems", least},
            {"maxItems", most}};
}

const Json quantity{{"type", {"string", "number"}}};

Json id() { return {{"type", "string"}, {"pattern", "^[a-z][a-z0-9_]*$"}, {"maxLength", 64}}; }

Json part(const Json& more) {
    return {{"anyOf",
             {fields::schema_of(fields::tagged_type<charge::Part>, more),
              fields::schema_of(fields::tagged_type<driveline::Part>, more)}}};
}

Json insert() {
    const auto anchors = list_of(id(), 1, 64, "Ids, of which the first that is there counts.");
    return {
        {"type", "object"},
        {"required", {"part"}},
        {"properties",
         {{"after", anchors}, {"before", anchors}, {"part", part({{"id", fields::part_id()}})}}},
        {"oneOf", {{{"required", {"after"}}}, {{"required", {"before"}}}}},
        {"additionalProperties", false}};
}

Json verbs() {
    const auto ids = [](std::string_view description) { return list_of(id(), 0, 64, description); };
    const Json anything = Json::object();
    auto replace = object_of(part(Json::object()), "Parts that take the place and id of others.");
    replace["maxProperties"] = 16;
    return {{"id", id()},
            {"requires", ids("Upgrades that this one needs.")},
            {"excludes", ids("Upgrades that this one never goes with.")},
            {"replace", replace},
            {"remove", ids("Parts that go.")},
            {"insert", list_of(insert(), 0, 16, "Parts that come, and where.")},
            {"set", object_of(anything, "New values, by address.")},
            {"choose", object_of(list_of(anything, 2, 16, "Values to choose from."),
                                 "Values of which the fastest is taken, by address.")},
            {"scale", object_of(quantity, "Factors, by address.")},
            {"add", object_of(quantity, "Signed amounts, by address.")}};
}

Json outing() {
    const Json legs =
        list_of(fields::schema_of(fields::tagged_type<vehicle::Leg>, Json::object()), 1,
                vehicle::Outing::most_legs, "What is driven, one after the other.");
    auto schema =
        fields::schema_of(fields::group_type<vehicle::Outing>, {{"id", id()}, {"legs", legs}});
    schema["required"].push_back("legs");
    return schema;
}

Json correlation() {
    const Json address{{"type", "string"}};
    const Json between{{"type", "array"},
                       {"description", "Addresses of two numbers with a ±."},
                       {"minItems", 2},
                       {"maxItems", 2},
                       {"items", address}};
    auto schema = fields::schema_of(fields::group_type<Correlation>, {{"between", between}});
    schema["required"].push_back("between");
    return schema;
}

Json limit() {
    return {{"type", "object"},
            {"required", {"why"}},
            {"properties", {{"max", quantity}, {"min", quantity}, {"why", {{"type", "string"}}}}},
            {"anyOf", {{{"required", {"max"}}}, {{"required", {"min"}}}}},
            {"additionalProperties", false}};
}

}  // namespace

Json schema() {
    auto more = Json::object();
    more["$schema"] = {{"type", "string"}, {"description", "This schema, for editors."}};
    more["format"] = {{"const", current_format}, {"description", "What this file is."}};
    const auto head = fields::schema_of(fields::group_type<Header>, Json::object());
    for (const auto& [key, property] : head["properties"].items())
        more[key] = property;
    more["limits"] = object_of(limit(), "Limits on results, by address.");
    more["correlations"] =
        list_of(correlation(), 0, most_correlations, "Uncertain numbers that err together.");
    more["observed"] = list_of(fields::schema_of(fields::group_type<Observation>, Json::object()),
                               0, 64, "What the vehicle was seen to do.");
    more["outings"] = list_of(outing(), 0, most_outings, "What is driven with the vehicle.");
    more["upgrades"] = list_of(fields::schema_of(fields::group_type<Terms>, verbs()), 0,
                               most_upgrades, "The menu of what could be done.");
    auto schema =
        fields::document_schema(fields::group_type<vehicle::Vehicle>, "Scenario of windwall", more);
    schema["required"].push_back("format");
    return schema;
}

std::string schema_text() { return fields::pretty(schema()); }

}  // namespace windwall::scenario
