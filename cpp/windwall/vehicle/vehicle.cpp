#include "windwall/vehicle/vehicle.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/balance/air_path.hpp"

namespace windwall::vehicle {
namespace {

std::optional<fields::Violation> more_than_can_be_balanced(const ChargePath& charge_path) {
    const std::size_t unknowns = AirPath(charge_path).unknowns.size();
    if (unknowns <= AirPath::most_unknowns) return std::nullopt;
    return fields::Violation{
        "charge_path", "too many valves, blowers and bypasses to be balanced at once: " +
                           std::to_string(unknowns) + " unknowns where " +
                           std::to_string(AirPath::most_unknowns) +
                           " are the most; a valve or blower has one, a bypass two, or seven with "
                           "a nozzle on its way round"};
}

constexpr std::size_t most_gears = 128;

/// Each is a curve of its own.
std::optional<fields::Violation> more_gears_than_are_solved(const Driveline& driveline) {
    const std::size_t gears = driveline::gears(driveline);
    if (gears <= most_gears) return std::nullopt;
    return fields::Violation{"driveline", "its gearboxes have " + std::to_string(gears) +
                                              " gears together, where " +
                                              std::to_string(most_gears) + " are the most"};
}

bool varies(const driveline::Part& part) {
    return part.visit([]<class Part>(const Part&) { return driveline::Varying<Part>; });
}

std::optional<fields::Violation> more_than_one_varies(const Driveline& driveline) {
    const std::string* first = nullptr;
    for (const auto& entry : driveline) {
        if (!varies(entry.part)) continue;
        if (first)
            return fields::Violation{
                "driveline",
                "\"" + *first + "\" and \"" + entry.id +
                    "\" both vary their ratio; at most one part may, since one alone can hold the "
                    "engine's speed"};
        first = &entry.id;
    }
    return std::nullopt;
}

}  // namespace

std::optional<fields::Violation> Vehicle::check() const {
    if (auto violation = more_than_can_be_balanced(charge_path)) return violation;
    if (auto violation = more_gears_than_are_solved(driveline)) return violation;
    return more_than_one_varies(driveline);
}

}  // namespace windwall::vehicle
