#pragma once
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/operating_point.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <vector>

namespace windwall::solve {

/// What the charge path is near to at a point just solved: seals that draw oil, a blower near the
/// runaway of its hot leak, a compressor off its map, water in a cold cooler, a nozzle that
/// dribbles or is drawn from; `now` is that point described.
std::vector<Caution> path_cautions(const vehicle::Balance& balance, const OperatingPoint& now);

/// About pumps that a throttle held back from knock has brought to rest, or nearly.
std::vector<Caution> throttled_sprays(const vehicle::Balance& balance);

}  // namespace windwall::solve
