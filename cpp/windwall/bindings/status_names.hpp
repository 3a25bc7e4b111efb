#pragma once
#include "windwall/solve/point/outcome.hpp"

#include <string>
#include <vector>

namespace windwall::bindings {

/// How each of many ended, by its word.
inline std::vector<std::string> status_names(const std::vector<solve::Status>& ended) {
    std::vector<std::string> names;
    for (const solve::Status one : ended)
        names.emplace_back(solve::name(one));
    return names;
}

}  // namespace windwall::bindings
