#pragma once
#include <optional>
#include <string>

namespace windwall::solve {

/// A bound on a result, and what happens beyond it.
struct Limit {
    std::string address;
    std::optional<double> max;
    std::optional<double> min;
    std::string why;
};

}  // namespace windwall::solve
