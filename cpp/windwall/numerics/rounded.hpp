#pragma once
#include <array>
#include <cstdio>
#include <cstdlib>

namespace windwall::numerics {

/// The double nearest to `number` written with so many significant decimal digits, at most 17. What
/// was found by iteration, or through library functions whose last bit differs between machines, is
/// then the same on all of them, but for the rare one that lies next to the edge of a digit.
inline double to_significant(double number, int digits) {
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%.*e", digits - 1, number);
    return std::strtod(text.data(), nullptr);
}

}  // namespace windwall::numerics
