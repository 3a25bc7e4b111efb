#include "windwall/vehicle/vehicle.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/fields/nearest.hpp"
#include "windwall/vehicle/balance/air_path.hpp"

#include <algorithm>

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
                           "a nozzle on its way round, a pump whose switch reads further on one"};
}

/// A switch reads behind a part that is there.
std::optional<fields::Violation> reads_nowhere(const ChargePath& charge_path) {
    std::vector<std::string_view> ids;
    for (const auto& entry : charge_path)
        ids.push_back(entry.id);
    std::optional<fields::Violation> broken;
    for (const auto& entry : charge_path) {
        entry.part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Switched<Part>) {
                const std::string& where = part.starts_where;
                if (where.empty() || std::ranges::find(ids, where) != ids.end()) return;
                const auto near = fields::nearest(where, ids);
                broken = {
                    "charge_path",
                    "\"" + entry.id + "/starts_where\" names \"" + where +
                        "\", and no part of the charge path has that id" +
                        (near.empty() ? "" : "; did you mean \"" + std::string(near) + "\"?")};
            }
        });
    }
    return broken;
}

bool carburets(const charge::Part& part) {
    return part.visit([]<class Part>(const Part&) { return charge::Carburetting<Part>; });
}

/// Only an engine with a fuel system of its own has fuel that a pump may take off.
std::optional<fields::Violation> cuts_a_carburettor(const ChargePath& charge_path) {
    const auto cutting = std::ranges::find_if(
        charge_path, [](const auto& entry) { return charge::cuts_fuel(entry.part); });
    const auto carburettor =
        std::ranges::find_if(charge_path, [](const auto& entry) { return carburets(entry.part); });
    if (cutting == charge_path.end() || carburettor == charge_path.end()) return std::nullopt;
    return fields::Violation{"charge_path",
                             "\"" + cutting->id +
                                 "/fuel_cut\" takes of fuel that the engine injects, "
                                 "and here \"" +
                                 carburettor->id + "\" meters it; leave `fuel_cut` out"};
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
    if (auto violation = reads_nowhere(charge_path)) return violation;
    if (auto violation = cuts_a_carburettor(charge_path)) return violation;
    if (auto violation = more_gears_than_are_solved(driveline)) return violation;
    return more_than_one_varies(driveline);
}

}  // namespace windwall::vehicle
