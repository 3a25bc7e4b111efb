#pragma once
#include "windwall/fields/measure.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// The units of this measure that a text may have been meant as: the one it is, or is but for
/// capitals, blanks and an s, a word that people say for it, each of several that one spelling
/// stands for, or else the nearest. Empty where it is like none; an empty text where none belongs.
std::vector<std::string> meant_units(std::string_view typed, const Measure& measure);

/// The units of this dimension that a list of choices names, as "lb (mass) or lbf (force)".
std::vector<std::string> units_among(std::string_view choices, Dimension dimension);

}  // namespace windwall::fields
