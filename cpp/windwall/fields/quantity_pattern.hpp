#pragma once
#include "windwall/fields/measure.hpp"

#include <string>

namespace windwall::fields {

/// A regular expression (ECMA-262 and Python alike) for what `read_quantity` takes, its length
/// aside.
std::string quantity_pattern(const Measure& measure);

/// The same for a number of things that are counted.
std::string whole_number_pattern();

/// The same for a unit alone, as it stands over the column of a table.
std::string unit_pattern(Dimension dimension);

}  // namespace windwall::fields
