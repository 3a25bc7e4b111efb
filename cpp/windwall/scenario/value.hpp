#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/spot.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace windwall::scenario {

/// A word of a choice, by its number.
struct Word {
    std::size_t number{};
};

/// Whatever can be set: nothing (which empties an optional number), a number in SI, a flag, a
/// word, a text, a list of numbers, a table.
using Value = std::variant<std::monostate, double, bool, Word, std::string, std::vector<double>,
                           fields::Columns>;

/// Reads what may stand at a spot, as a file writes it there; null empties what may be empty.
std::optional<Value> read_value(const Spot& spot, const fields::Cursor& value);

/// Puts a value where it belongs, or says why it cannot stand in this vehicle.
std::string put(const Spot& spot, const Value& value, vehicle::Vehicle& vehicle);

/// What stands at a spot of a vehicle; nothing where an optional is empty.
Value value_at(const Spot& spot, const vehicle::Vehicle& vehicle);

}  // namespace windwall::scenario
