#include "windwall/vehicle/balance/air_path.hpp"

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
            wet = wet || charge::Wetting<Part>;
            if constexpr (charge::Branching<Part>) {
                if (blower) loops.push_back({.takeoff = i, .back = *blower, .wet = wet});
            }
        });
    }
    return loops;
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
}

}  // namespace windwall::vehicle
