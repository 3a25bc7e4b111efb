#pragma once
#include "windwall/vehicle/balance/loop.hpp"
#include "windwall/vehicle/balance/unknown.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace windwall::vehicle {

/// A pump that is switched by a pressure of the path.
struct PressureSwitch {
    std::size_t part{};     // number of what it switches
    std::size_t station{};  // of the part behind which it reads
    std::size_t
        pressure{};  // unknown, of the ambient pressure, where that lies further on; or none
};

/// What the engine, the valves and blowers and the bypasses of a charge path declare.
struct AirPath {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    /// So many the path may declare; the rest is for blocks.
    static constexpr std::size_t most_unknowns = 24;

    Unknowns unknowns;
    std::size_t flow{};               // of the engine
    std::vector<std::size_t> behind;  // for each part its pressure behind, or none
    std::vector<Loop> loops;
    std::vector<PressureSwitch> switches;

    explicit AirPath(const ChargePath& charge_path);

private:
    void declare_switches(const ChargePath& charge_path);
};

}  // namespace windwall::vehicle
