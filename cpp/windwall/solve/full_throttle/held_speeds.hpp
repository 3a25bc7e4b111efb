#pragma once
#include "windwall/driveline/variator.hpp"
#include "windwall/numerics/table.hpp"
#include "windwall/solve/full_throttle/gear_range.hpp"

#include <cstddef>
#include <vector>

namespace windwall::solve {

/// Where a variator holds the engine at full throttle, from its lowest gearing to its highest.
struct HeldSpeeds {
    std::vector<double> positions;
    std::vector<double> speeds;  // rad/s, none below the one at the launch
};

/// Where forces hold it, the engine's torque is the one at that very speed.
HeldSpeeds held_speeds(const driveline::Variator& variator, std::size_t gear, double launch,
                       const FullThrottleTorque& torque);

/// The position at which engine speeds over position first pass a ceiling; the last where none
/// does.
double end_of_shift(const numerics::Table& speeds, double ceiling);

}  // namespace windwall::solve
