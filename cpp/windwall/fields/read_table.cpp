#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::fields {
namespace {

constexpr std::size_t most_rows = 4096;

// A column of the file: which of the table's columns it is, in which unit.
struct FileColumn {
    std::size_t at;
    const Unit* unit;
    Range range;  // SI
};

Row as_row(const Column& column) {
    return required(column.key, {}, {}, column.measure, column.range, column.sentence);
}

std::optional<FileColumn> read_column(std::span<const Column> columns, const Cursor& value,
                                      std::string_view key) {
    const auto found = std::ranges::find(columns, key, &Column::key);
    if (found == columns.end()) return std::nullopt;
    const auto* text = value.text();
    if (!text) {
        value.complain("the unit of the column is expected, found " + value.is_what());
        return std::nullopt;
    }
    const auto* unit = find_unit(found->measure.dimension, *text);
    if (!unit) {
        value.complain(unit_complaint(*text, found->measure));
        return std::nullopt;
    }
    value.note({.text = *text, .bare = false, .value = 0, .sigma = {}, .unit = unit, .place = {}});
    return FileColumn{static_cast<std::size_t>(found - columns.begin()), unit,
                      range_in_si(as_row(*found))};
}

// The file's columns in its own order; fewer than it has where one is wrong.
std::vector<FileColumn> read_columns(std::span<const Column> columns, const Cursor& object) {
    std::vector<FileColumn> order;
    std::vector<Row> rows;
    for (const auto& column : columns)
        rows.push_back(as_row(column));
    check_keys(object, rows, {});
    for (const auto key : object.keys())
        if (const auto column = read_column(columns, object[key], key)) order.push_back(*column);
    return order;
}

std::optional<double> read_cell(const Column& column, const FileColumn& in_file,
                                const Cursor& cell) {
    if (!cell.json().is_number()) {
        cell.complain("a plain number is expected, its unit is the column's; found " +
                      cell.is_what());
        return std::nullopt;
    }
    const auto& [at, unit, range] = in_file;
    const double si = to_si(cell.json().get<double>(), *unit);
    if (si >= range.low && si <= range.high) return si;
    const auto typed =
        cell.json().dump() + (unit->text.empty() ? "" : " " + std::string(unit->text));
    cell.complain(range_complaint(si, as_row(column), typed));
    return std::nullopt;
}

void read_row(const Row& row, std::span<const FileColumn> order, Columns& into,
              const Cursor& cells) {
    if (!cells.is_list() || cells.size() != order.size()) {
        cells.complain("a list of " + std::to_string(order.size()) +
                       " numbers is expected, one for each column; found " + cells.is_what() +
                       (cells.is_list() ? " of " + std::to_string(cells.size()) : ""));
        return;
    }
    for (std::size_t at = 0; at < order.size(); ++at) {
        const auto column = order[at].at;
        if (const auto number = read_cell(row.columns[column], order[at], cells.entry(at)))
            into.column[column].push_back(*number);
    }
}

bool has_shape_of_table(const Cursor& object) {
    return object.is_object() && object.has("columns") && object["columns"].is_object() &&
           object.has("rows") && object["rows"].is_list();
}

}  // namespace

void read_table(const Row& row, Columns& into, const Cursor& object) {
    if (!has_shape_of_table(object)) {
        object.complain("a table is expected here: {\"columns\": {key: unit}, \"rows\": [[...]]}");
        return;
    }
    check_keys(object, {}, {"columns", "rows"});
    const auto order = read_columns(row.columns, object["columns"]);
    if (order.size() != row.columns.size() || order.size() != object["columns"].size()) return;
    const auto rows = object["rows"];
    if (rows.size() == 0 || rows.size() > most_rows) {
        rows.complain("a table has 1 to " + std::to_string(most_rows) + " rows, found " +
                      std::to_string(rows.size()));
        return;
    }
    object.note({});
    into.column.assign(row.columns.size(), {});
    for (std::size_t at = 0; at < rows.size(); ++at)
        read_row(row, order, into, rows.entry(at));
}

}  // namespace windwall::fields
