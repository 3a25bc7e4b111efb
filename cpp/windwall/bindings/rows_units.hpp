#pragma once
#include "windwall/fields/measure.hpp"

#include <string_view>

namespace windwall::bindings {

/// The unit that numbers of this dimension are held in, the way data files name it.
std::string_view si_unit(fields::Dimension dimension);

}  // namespace windwall::bindings
