#pragma once
#include "windwall/fields/measure.hpp"

#include <string>
#include <string_view>

/// Where a pressure counts from: vacuum, the local air, or nowhere, being a difference.
namespace windwall::fields {

struct Row;

/// "above vacuum", "above the local air" or "of difference"; empty where nothing is a pressure.
std::string_view zero_point(Dimension dimension) noexcept;

/// Why the word of a pressure is not the one its row takes, and what the row counts from; empty
/// where the unit belongs to no pressure, or to one of this kind.
std::string zero_point_complaint(std::string_view unit, const Measure& measure);

/// What a pressure that counts from elsewhere was probably meant to be; empty where nothing in the
/// row's range is. Between vacuum and the local air it takes 101.3 kPa.
std::string meant_pressure(std::string_view text, const Row& row);

}  // namespace windwall::fields
