#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/fields/member.hpp"
#include "windwall/fields/provenance.hpp"

#include <string>

namespace windwall::fields {

/// A struct as an object of a document, keys in the order of its rows. A value that still is what
/// its note says is written as it was typed, another one in the unit of its row; what is not there
/// and defaults that nobody stated are left out.
Json write(const GroupType& group, const void* from, const Provenance& notes,
           std::string_view address = {});

/// JSON text as people like to read it: two spaces a level, and on one line what fits on one.
std::string pretty(const Json& value);

}  // namespace windwall::fields
