#include "windwall/fields/example.hpp"

#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::fields {
namespace {

Json number(const Row& row) {
    const auto text = example_text(row);
    return row.measure.unit.empty() ? Json::parse(text) : Json(text);
}

// A third and two thirds up every range, so that columns rise.
Json table(const Row& row) {
    auto units = Json::object();
    auto low = Json::array(), high = Json::array();
    for (const auto& column : row.columns) {
        units[std::string(column.key)] = column.measure.unit;
        const double third = (column.range.high - column.range.low) / 3;
        low.push_back(column.range.low + third);
        high.push_back(column.range.high - third);
    }
    return {{"columns", units}, {"rows", {low, high}}};
}

Json fill(const GroupType& group, Json into) {
    for (const auto& row : group.rows())
        if (must_be_stated(row)) into[std::string(row.key)] = example_of(row);
    return into;
}

}  // namespace

Json example_of(const Row& row) {
    const auto& member = row.member;
    switch (member.shape) {
        case FieldType::number:
        case FieldType::optional_number: return number(row);
        case FieldType::flag: return true;
        case FieldType::text: return "A text.";
        case FieldType::choice: return member.choice->names.front();
        case FieldType::list:
            return Json::array_t(std::max<std::size_t>(1, row.count.least), number(row));
        case FieldType::table: return table(row);
        case FieldType::group:
        case FieldType::optional_group: return example_of(*member.group);
        case FieldType::tagged: return example_of(*member.tagged, 0);
        case FieldType::parts:
            return Json::array({example_of(*member.parts->tagged, 0, "example_1")});
    }
    return nullptr;
}

Json example_of(const GroupType& group) { return fill(group, Json::object()); }

Json example_of(const TaggedType& tagged, std::size_t kind, std::string_view id) {
    auto object = Json::object();
    if (!id.empty()) object["id"] = id;
    object["kind"] = tagged.kinds[kind];
    return fill(*tagged.types[kind], std::move(object));
}

}  // namespace windwall::fields
