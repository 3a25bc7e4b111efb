#pragma once
#include "windwall/fields/member_types.hpp"

#include <string>
#include <vector>

namespace windwall::bindings {

/// Each of many by its word.
template <class Enum>
std::vector<std::string> enum_names(const std::vector<Enum>& all) {
    std::vector<std::string> names;
    for (const Enum one : all)
        names.emplace_back(fields::Names<Enum>::names[static_cast<std::size_t>(one)]);
    return names;
}

}  // namespace windwall::bindings
