#pragma once
#include "windwall/fields/quantity_text.hpp"
#include "windwall/fields/row.hpp"

#include <string>
#include <string_view>

namespace windwall::fields {

/// Why a text is no quantity that this row takes: what was found, what is allowed, and what was
/// probably meant; where nothing is likely, an example.
std::string quantity_lesson(std::string_view text, const Row& row, std::string_view example);

/// Empty, or why the unit of a text, or the lack of one, says nothing certain.
std::string unit_violation(const QuantityText& text, const Measure& measure);

}  // namespace windwall::fields
