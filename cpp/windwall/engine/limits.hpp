#pragma once
#include "windwall/fields/class_limit.hpp"

#include <array>

namespace windwall::engine {

/// What no engine of this kind bears.
inline constexpr std::array engine_limits{
    fields::ClassLimit{"/knock/margin", "detonation", {}, 0.0},
    // K, common practice for air-cooled aluminium
    fields::ClassLimit{"head_temperature", "an aluminium head softens", 273.15 + 250},
};

// Heads of aluminium and mineral oil; common practice, light-aircraft engines among it. K.
inline constexpr std::array engine_cautions{
    fields::ClassCaution{"hot_head", "head_temperature", 273.15 + 230},
    fields::ClassCaution{"hot_oil", "oil_temperature", 273.15 + 120},
};

}  // namespace windwall::engine
