#pragma once
#include "windwall/fields/cursor.hpp"
#include "windwall/scenario/value.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace windwall::scenario {

/// A new value: a number in SI, or a text as a file would have it; nothing empties an optional.
using Given = std::variant<std::monostate, double, bool, std::string, std::vector<double>>;

/// Reads it for the place that it is meant for; what is wrong with it goes to the findings.
std::optional<Value> read_given(const FieldPath& path, const Given& given,
                                fields::ReadContext& findings);

}  // namespace windwall::scenario
