#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/fields/field_path.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace windwall::scenario {

using fields::FieldPath;

/// A word of a choice, by its number.
struct Word {
    std::size_t number{};
};

/// Whatever can be set: nothing (which empties an optional number), a number in SI, a flag, a
/// word, a text, a list of numbers, a table.
using Value = std::variant<std::monostate, double, bool, Word, std::string, std::vector<double>,
                           fields::Columns>;

/// The path of an input of this vehicle, or what is wrong with its address.
fields::Expected<FieldPath> find_input(const vehicle::Vehicle& vehicle, std::string_view address);

/// Whether two paths lead to the same value; a whole list and one of its entries do, too.
bool overlap(const FieldPath& one, const FieldPath& other);

/// Reads what may stand at a path, as a file writes it there; null empties what may be empty.
std::optional<Value> read_value(const FieldPath& path, const fields::Cursor& value);

/// Puts a value where it belongs, or says why it cannot stand in this vehicle.
std::string put(const FieldPath& path, const Value& value, vehicle::Vehicle& vehicle);

/// What stands at a path of a vehicle; nothing where an optional is empty.
Value value_at(const FieldPath& path, const vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario
