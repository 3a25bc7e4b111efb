#pragma once
#include "windwall/fields/expected.hpp"

#include <string>
#include <string_view>

namespace windwall::fields {

/// A quantity taken apart: "0.56 ± 0.05 m2" is {"0.56", "0.05", "m2"}.
struct QuantityText {
    std::string_view number;
    std::string_view sigma;  // empty where none is written
    std::string_view unit;
    bool sigma_is_share = false;  // "38 kPa ± 5 %": the sigma is a percentage of the number
};

inline constexpr std::size_t longest_quantity = 64;  // characters

/// Takes a text apart by the grammar alone: number, perhaps ± number, unit, perhaps ± number %.
Expected<QuantityText> take_apart(std::string_view text);

}  // namespace windwall::fields
