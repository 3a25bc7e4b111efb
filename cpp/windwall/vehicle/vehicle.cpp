#include "windwall/vehicle/vehicle.hpp"

#include "windwall/numerics/newton.hpp"
#include "windwall/vehicle/loop.hpp"

namespace windwall::vehicle {
namespace {

std::size_t unknowns_of(const charge::Part& part) {
    return part.visit([]<class Part>(const Part&) -> std::size_t {
        if constexpr (charge::Branching<Part>) return Loop::most_unknowns;
        return charge::Metering<Part> || charge::Driven<Part>;
    });
}

}  // namespace

std::optional<fields::Complaint> Vehicle::check() const {
    std::size_t unknowns = 1;  // the flow
    for (const auto& entry : charge_path)
        unknowns += unknowns_of(entry.part);
    if (unknowns <= numerics::most_unknowns) return std::nullopt;
    return fields::Complaint{
        "charge_path",
        "too many valves, blowers and bypasses to be balanced at once; at most "
        "23, of which a bypass counts as " +
            std::to_string(Loop::most_unknowns)};
}

}  // namespace windwall::vehicle
