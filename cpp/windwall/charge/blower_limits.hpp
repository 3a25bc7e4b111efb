#pragma once
#include "windwall/fields/class_limit.hpp"

#include <array>

/// What is known of every blower and compressor with rotors in a case.
namespace windwall::charge {

/// Depression at a blower's inlet that its rotor seals bear, Pa; common practice for lip seals
/// without a vent.
inline constexpr double seals_bear = 30e3;

inline constexpr std::array blower_limits{
    fields::ClassLimit{"inlet_depression", "oil drawn past the rotor seals", seals_bear},
};

inline constexpr std::array blower_cautions{
    fields::ClassCaution{"inlet_depression", "inlet_depression", seals_bear},
    // K; coated rotors are rated to 130 to 150 degC
    fields::ClassCaution{"hot_charge", "outlet/temperature", 273.15 + 200},
    // share of what the rotors carry that leaks back
    fields::ClassCaution{"thermal_runaway", "leak_share", 0.5},
};

}  // namespace windwall::charge
