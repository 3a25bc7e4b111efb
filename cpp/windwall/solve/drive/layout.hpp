#pragma once
#include "windwall/vehicle/thermal_nodes.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::solve {

/// What is integrated over a drive to tell where the energy went, in kJ in the state.
enum class Energy {
    fuel,       // burnt, by its lower heating value
    crank,      // what the engine gives behind the blower's belt
    driveline,  // lost in it, slip not included
    clutch,     // lost where crank and wheels turn apart
    tyres,      // lost to slip at the road
    air,
    rolling,
    grade,
    brakes,
};
inline constexpr std::array<std::string_view, 9> energy_names{
    "fuel", "crank", "driveline", "clutch", "tyres", "air", "rolling", "grade", "brakes",
};
inline constexpr std::size_t energies = energy_names.size();

/// A thermal node of the vehicle: whose it is, and whether time changes its temperature.
struct DriveNode {
    vehicle::NodeOwner owner;
    std::string address;     // of its temperature among the results of a drive
    double heat_capacity{};  // J/K
    bool stated = false;     // the scenario holds it
    double rest{};           // K, of a long pull there
};

/// Where each number of a drive's state stands. Temperatures in K, liquids in g, energies in kJ, so
/// that one tolerance fits all.
struct Layout {
    static constexpr std::size_t road_speed = 0, distance = 1, engine_speed = 2;
    static constexpr std::size_t fuel_used = 3, liquid_used = 4;  // g
    static constexpr std::size_t first_energy = 5;
    static constexpr std::size_t first_node = first_energy + energies;
    static constexpr std::size_t liquids = 4;  // of the film, by media::Vapour

    std::vector<DriveNode> nodes;
    bool wet = false;                // liquid may run along the walls
    std::vector<std::size_t> pumps;  // parts of the charge path that have one
    bool trims = false;              // the engine's own fuel follows what is sprayed, late

    std::size_t first_film() const noexcept { return first_node + nodes.size(); }
    std::size_t first_pump() const noexcept { return first_film() + (wet ? liquids : 0); }
    /// Of each pump the share that it runs at, and how far its line is filled.
    static constexpr std::size_t of_a_pump = 2;
    /// g of air per kg for whose fuel the engine's own has been trimmed; where it `trims`.
    std::size_t trim() const noexcept { return first_pump() + of_a_pump * pumps.size(); }
    std::size_t size() const noexcept { return trim() + (trims ? 1 : 0); }
    static constexpr std::size_t energy(Energy entry) noexcept {
        return first_energy + static_cast<std::size_t>(entry);
    }
};

}  // namespace windwall::solve
