#pragma once
#include "windwall/fields/row.hpp"

#include <string>

/// What a row says of itself, for schemas, reference pages and docstrings.
namespace windwall::fields {

/// The default as a file would state it, "8 mm"; empty where there is none to state.
std::string default_of(const Row& row);

/// Its standard deviation in the same unit, "1 mm"; empty where the default is exact or absent.
std::string default_sigma_of(const Row& row);

/// The sentence of the row with its range and default in words.
std::string description_of(const Row& row);

}  // namespace windwall::fields
