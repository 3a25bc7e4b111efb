#pragma once
#include "windwall/fields/measure.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// What a text that is no quantity was probably meant as, and the rule that it breaks; the rule is
/// empty where only its unit is wrong.
struct MeantQuantity {
    std::string text;
    std::string rule;
};

/// The likelier first; whether a row takes one is for the reader to say.
std::vector<MeantQuantity> meant_quantities(std::string_view text, const Measure& measure);

}  // namespace windwall::fields
