#pragma once
#include "windwall/vehicle/vehicle.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// What a small change would do to the speed; by solving again, with the change made.
struct Sensitivity {
    std::string change;          // "drag area -1 %"
    std::optional<double> gain;  // m/s; empty where the changed vehicle has no answer
};

/// One percent of power, drag area, mass and overall ratio, ten kelvin of charge, one octane
/// number.
std::vector<Sensitivity> sensitivities(const vehicle::Vehicle& vehicle, double speed);

}  // namespace windwall::solve
