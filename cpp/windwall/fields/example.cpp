#include "windwall/fields/example.hpp"

#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/fields/visit.hpp"

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

struct Example {
    const Row& row;

    Json operator()(double) const { return number(row); }
    Json operator()(const std::optional<double>&) const { return number(row); }
    Json operator()(bool) const { return true; }
    Json operator()(const std::string&) const { return "A text."; }
    Json operator()(const ChoiceRef<const void>& choice) const { return choice.type.names[0]; }
    Json operator()(const std::vector<double>&) const {
        return Json::array_t(std::max<std::size_t>(1, row.count.least), number(row));
    }
    Json operator()(const Columns&) const { return table(row); }
    Json operator()(const GroupRef<const void>& group) const { return example_of(group.type); }
    Json operator()(const TaggedRef<const void>& tagged) const {
        return example_of(tagged.type, 0);
    }
    Json operator()(const PartsRef<const void>& parts) const {
        return Json::array({example_of(*parts.type.tagged, 0, "example_1")});
    }
};

}  // namespace

Json example_of(const Row& row) { return visit_default(row, Example{row}); }

Json example_of(const GroupType& group) { return fill(group, Json::object()); }

Json example_of(const TaggedType& tagged, std::size_t kind, std::string_view id) {
    auto object = Json::object();
    if (!id.empty()) object["id"] = id;
    object["kind"] = tagged.kinds[kind];
    return fill(*tagged.types[kind], std::move(object));
}

}  // namespace windwall::fields
