#pragma once
#include "windwall/fields/document.hpp"

namespace windwall::scenario {

/// JSON Schema 2020-12 of scenario files, for editors. What depends on the vehicle at hand, such as
/// addresses, only the reader knows.
fields::Json schema();

}  // namespace windwall::scenario
