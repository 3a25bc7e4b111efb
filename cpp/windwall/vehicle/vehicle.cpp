#include "windwall/vehicle/vehicle.hpp"

#include "windwall/numerics/newton.hpp"
#include "windwall/vehicle/loop.hpp"

namespace windwall::vehicle {
namespace {

std::size_t unknowns_of(const charge::Part& part) {
    return part.visit([]<class Part>(const Part&) -> std::size_t {
        if constexpr (charge::Branching<Part>) return Loop::most_unknowns;
        return charge::Balanced<Part>;
    });
}

std::optional<fields::Violation> more_than_can_be_balanced(const ChargePath& charge_path) {
    std::size_t unknowns = 1;  // the flow
    for (const auto& entry : charge_path)
        unknowns += unknowns_of(entry.part);
    if (unknowns <= numerics::most_unknowns) return std::nullopt;
    return fields::Violation{
        "charge_path", "too many valves, blowers and bypasses to be balanced at once; at most " +
                           std::to_string(numerics::most_unknowns - 1) +
                           ", of which a bypass counts as " + std::to_string(Loop::most_unknowns)};
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
    return more_than_one_varies(driveline);
}

}  // namespace windwall::vehicle
