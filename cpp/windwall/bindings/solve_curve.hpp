#pragma once
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace windwall::bindings {

/// Full throttle over engine speed, one column for each number that an operating point answers.
struct Curve {
    std::vector<std::string> addresses;
    std::vector<std::vector<double>> columns;  // SI, NaN where there is no answer
    std::vector<std::string> status;
};

/// In one gear, counted from 0, or in all of them, `points` engine speeds each.
Curve full_throttle_curve(const vehicle::Vehicle& vehicle, std::optional<std::size_t> gear,
                          std::size_t points);

}  // namespace windwall::bindings
