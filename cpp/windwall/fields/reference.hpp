#pragma once
#include "windwall/fields/member.hpp"

#include <string>
#include <string_view>

/// Reference pages in Markdown, from rows and from the table of units.
namespace windwall::fields {

/// A page about everything that can be reached from here: a section for each struct and kind.
std::string reference_page(const GroupType& root, std::string_view title);

/// One struct: what it is, and its rows as a table.
std::string reference_section(const GroupType& group, std::string_view heading);

/// A page about every unit: how it is spelt, and what it is worth.
std::string units_page();

}  // namespace windwall::fields
