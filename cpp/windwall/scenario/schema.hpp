#pragma once
#include "windwall/fields/document.hpp"

#include <string>

namespace windwall::scenario {

/// JSON Schema 2020-12 of scenario files, for editors. What depends on the vehicle at hand, such as
/// addresses, only the reader knows.
fields::Json schema();

/// The same as text, two spaces a level.
std::string schema_text();

}  // namespace windwall::scenario
