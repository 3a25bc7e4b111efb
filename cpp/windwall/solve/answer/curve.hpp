#pragma once
#include "windwall/solve/point/outcome.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// Full throttle over engine speed, one column for each number that an operating point answers.
struct Curve {
    std::vector<std::string> addresses;
    std::vector<std::vector<double>> columns;  // SI, NaN where there is no answer
    std::vector<Status> status;
};

/// In one gear, counted from 0, or in all of them, `points` engine speeds each. Where it broke off
/// there is one without numbers.
Curve full_throttle_curve(const vehicle::Vehicle& vehicle, std::optional<std::size_t> gear,
                          std::size_t points);

}  // namespace windwall::solve
