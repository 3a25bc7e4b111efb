#pragma once
#include <string_view>

namespace windwall::charge {

/// What no part of its class bears, whatever its maker says; declared by the part.
struct ClassLimit {
    std::string_view result;  // address from the part's own result
    double max;
    std::string_view why;
};

/// Depression at a blower's inlet that its rotor seals bear, Pa; common practice for lip seals
/// without a vent.
inline constexpr ClassLimit rotor_seals{"inlet_depression", 30e3, "oil drawn past the rotor seals"};

}  // namespace windwall::charge
