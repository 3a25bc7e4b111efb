#pragma once
#include "windwall/fields/row.hpp"

namespace windwall::fields {

/// The second column at a value of the first, linear in between, its ends held; zero where the
/// table is empty.
double looked_up(const Columns& table, double at) noexcept;

/// Whether each entry of the first column of a table with rows is above the one before.
bool rises(const Columns& table) noexcept;

}  // namespace windwall::fields
