#include "windwall/fields/schema.hpp"

#include "windwall/fields/quantity.hpp"
#include "windwall/fields/quantity_pattern.hpp"
#include "windwall/fields/quantity_text.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/fields/row_text.hpp"
#include "windwall/fields/visit.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::fields {
namespace {

std::string definition(const Measure& measure) {
    if (measure.unit == "%") return "percentage";
    std::string name(name_of(measure.dimension));
    std::ranges::replace(name, ' ', '_');
    return name;
}

Json quantity(const Measure& measure) {
    Json types = Json::array({"string"});
    if (bare_number_is_enough(measure)) types.push_back("number");
    return {{"type", types.size() == 1 ? types[0] : types},
            {"maxLength", longest_quantity},
            {"pattern", quantity_pattern(measure)}};
}

Json number(const Row& row) {
    Json schema{{"$ref", "#/$defs/" + (row.whole ? "whole_number" : definition(row.measure))}};
    if (bare_number_is_enough(row.measure)) {
        schema["minimum"] = row.range.low;
        schema["maximum"] = row.range.high;
    }
    schema["examples"] = {example_text(row)};
    return schema;
}

Json list(const Row& row) {
    return {{"type", "array"},
            {"items", number(row)},
            {"minItems", row.count.least},
            {"maxItems", row.count.most}};
}

Json table(const Row& row) {
    Json units = Json::object(), keys = Json::array();
    for (const auto& column : row.columns) {
        keys.push_back(column.key);
        units[std::string(column.key)] = {{"type", "string"},
                                          {"pattern", unit_pattern(column.measure.dimension)},
                                          {"description", column.sentence},
                                          {"examples", {column.measure.unit}}};
    }
    const Json cells{{"type", "array"},
                     {"items", {{"type", "number"}}},
                     {"minItems", keys.size()},
                     {"maxItems", keys.size()}};
    return {{"type", "object"},
            {"required", {"columns", "rows"}},
            {"properties",
             {{"columns",
               {{"type", "object"},
                {"required", keys},
                {"properties", units},
                {"additionalProperties", false}}},
              {"rows", {{"type", "array"}, {"minItems", 1}, {"items", cells}}}}},
            {"additionalProperties", false}};
}

Json parts(const Row& row) {
    return {{"type", "array"},
            {"items", schema_of(*row.member.parts->tagged, {{"id", part_id()}})},
            {"minItems", row.need == Need::required ? 1 : 0},
            {"maxItems", row.count.most}};
}

struct Schema {
    const Row& row;

    Json operator()(double) const { return number(row); }
    Json operator()(const std::optional<double>&) const { return number(row); }
    Json operator()(bool) const { return {{"type", "boolean"}}; }
    Json operator()(const std::string&) const { return {{"type", "string"}, {"maxLength", 4096}}; }
    Json operator()(const ChoiceRef<const void>& choice) const {
        return {{"enum", choice.type.names}};
    }
    Json operator()(const std::vector<double>&) const { return list(row); }
    Json operator()(const Columns&) const { return table(row); }
    Json operator()(const GroupRef<const void>& group) const {
        return schema_of(group.type, Json::object());
    }
    Json operator()(const TaggedRef<const void>& tagged) const {
        return schema_of(tagged.type, Json::object());
    }
    Json operator()(const PartsRef<const void>&) const { return parts(row); }
};

Json described(const Row& row) {
    auto schema = visit_default(row, Schema{row});
    schema["description"] = description_of(row);
    if (const auto usual = default_of(row); !usual.empty()) {
        const bool flag = row.member.type == FieldType::flag;
        schema["default"] = flag ? Json(usual == "true") : Json(usual);
    }
    return schema;
}

}  // namespace

Json part_id() {
    return {{"type", "string"},
            {"pattern", "^[a-z][a-z0-9_]*$"},
            {"maxLength", 64},
            {"description", "The part's own word, by which addresses name it."}};
}

Json schema_of(const GroupType& group, const Json& more) {
    auto properties = more;
    auto needed = Json::array();
    for (const auto& [key, value] : more.items())
        if (key == "id" || key == "kind") needed.push_back(key);
    for (const auto& row : group.rows()) {
        properties[std::string(row.key)] = described(row);
        if (must_be_stated(row)) needed.push_back(row.key);
    }
    return {{"type", "object"},
            {"description", group.description},
            {"required", needed},
            {"properties", properties},
            {"additionalProperties", false}};
}

Json schema_of(const TaggedType& tagged, const Json& more) {
    auto cases = Json::array();
    for (std::size_t at = 0; at < tagged.kinds.size(); ++at) {
        const Json is_kind{{"properties", {{"kind", {{"const", tagged.kinds[at]}}}}},
                           {"required", {"kind"}}};
        auto keys = more;
        keys["kind"] = {{"const", tagged.kinds[at]},
                        {"description", tagged.types[at]->description}};
        cases.push_back({{"if", is_kind}, {"then", schema_of(*tagged.types[at], keys)}});
    }
    return {{"type", "object"},
            {"required", {"kind"}},
            {"properties", {{"kind", {{"enum", tagged.kinds}}}}},
            {"allOf", cases}};
}

Json quantity_schemas() {
    auto schemas = Json::object();
    schemas[definition(percent())] = quantity(percent());
    schemas["whole_number"] = {{"type", {"string", "integer"}},
                               {"maxLength", longest_quantity},
                               {"pattern", whole_number_pattern()}};
    for (const auto& unit : all_units()) {
        const Measure measure{unit.dimension, unit.text};
        if (const auto name = definition(measure); !schemas.contains(name))
            schemas[name] = quantity(measure);
    }
    return schemas;
}

Json document_schema(const GroupType& root, std::string_view title, const Json& more) {
    Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}};
    schema.update(schema_of(root, more));
    schema["$defs"] = quantity_schemas();
    return schema;
}

}  // namespace windwall::fields
