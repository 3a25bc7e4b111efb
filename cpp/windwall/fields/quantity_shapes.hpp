#pragma once
#include "windwall/fields/meant_quantity.hpp"
#include "windwall/fields/pieces.hpp"

#include <vector>

namespace windwall::fields {

/// What pieces of this shape mean: a unit too many, a fraction, a ratio, two ends of a range, a
/// sum.
std::vector<MeantQuantity> read_shape(const std::vector<Piece>& pieces, const Measure& measure);

}  // namespace windwall::fields
