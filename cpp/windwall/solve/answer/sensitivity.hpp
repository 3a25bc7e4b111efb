#pragma once
#include "windwall/solve/results/sensitivity.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <vector>

namespace windwall::solve {

/// One percent of power, drag area, mass and overall ratio, ten kelvin of charge, one octane
/// number.
std::vector<Sensitivity> sensitivities(const vehicle::Vehicle& vehicle, double speed);

}  // namespace windwall::solve
