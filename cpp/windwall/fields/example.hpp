#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/fields/member.hpp"

#include <cstddef>
#include <string_view>

/// Objects made up from rows alone: what has to be stated, with values from inside the ranges.
/// They are right row by row; rules across fields know nothing of them.
namespace windwall::fields {

Json example_of(const GroupType& group);

/// A part of this kind; with an id where one is given.
Json example_of(const TaggedType& tagged, std::size_t kind, std::string_view id = {});

/// A value for one row.
Json example_of(const Row& row);

}  // namespace windwall::fields
