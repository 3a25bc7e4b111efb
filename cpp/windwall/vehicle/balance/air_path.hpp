#pragma once
#include "windwall/vehicle/balance/loop.hpp"
#include "windwall/vehicle/balance/unknown.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <vector>

namespace windwall::vehicle {

/// What the engine, the valves and blowers and the bypasses of a charge path declare.
struct AirPath {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    /// So many the path may declare; the rest is for blocks.
    static constexpr std::size_t most_unknowns = 24;

    Unknowns unknowns;
    std::size_t flow{};               // of the engine
    std::vector<std::size_t> behind;  // for each part its pressure behind, or none
    std::vector<Loop> loops;

    explicit AirPath(const ChargePath& charge_path);
};

}  // namespace windwall::vehicle
