#include "windwall/vehicle/balance/air_path.hpp"

#include <algorithm>
#include <optional>

namespace windwall::vehicle {
namespace {

/// A bypass goes back to the last blower before it; without one it is never passed.
std::vector<Loop> find_loops(const ChargePath& path) {
    std::vector<Loop> loops;
    std::optional<std::size_t> blower;
    bool wet = false;
    for (std::size_t i = 0; i < path.size(); ++i) {
        path[i].part.visit([&]<class Part>(const Part&) {
            if constexpr (charge::Driven<Part>) {
                blower = i;
                wet = false;
            }
            wet = wet || charge::Wetting<Part> || charge::Leaking<Part>;
            if constexpr (charge::Branching<Part>) {
                if (blower) loops.push_back({.takeoff = i, .back = *blower, .wet = wet});
            }
        });
    }
    return loops;
}

/// The part of an id, or the last one, behind which the manifold is.
std::size_t find_station(const ChargePath& path, std::string_view id) {
    const auto found = std::ranges::find(path, id, [](const auto& entry) { return entry.id; });
    return found == path.end() ? path.size() - 1 : static_cast<std::size_t>(found - path.begin());
}

}  // namespace

AirPath::AirPath(const ChargePath& charge_path) : loops(find_loops(charge_path)) {
    flow = unknowns.declare({"engine", "logarithm of the flow"});
    for (const auto& entry : charge_path) {
        const bool balanced =
            entry.part.visit([]<class Part>(const Part&) { return charge::Balanced<Part>; });
        behind.push_back(balanced ? unknowns.declare({entry.id, "pressure behind"}) : none);
    }
    for (Loop& loop : loops)
        loop.declare(unknowns, charge_path[loop.takeoff].id);
    declare_switches(charge_path);
}

/// What is read further on is not known yet where it switches, so it is sought with the rest.
void AirPath::declare_switches(const ChargePath& charge_path) {
    for (std::size_t i = 0; i < charge_path.size(); ++i) {
        charge_path[i].part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Switched<Part>) {
                if (!part.switched()) return;
                const std::size_t station = find_station(charge_path, part.starts_where);
                const Unknown sought{charge_path[i].id, "pressure at its switch", 1};
                switches.push_back({i, station, station > i ? unknowns.declare(sought) : none});
            }
        });
    }
}

}  // namespace windwall::vehicle
