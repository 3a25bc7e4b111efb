#include "windwall/fields/zero_point.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/quantity_text.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/units.hpp"

#include <optional>

namespace windwall::fields {
namespace {

constexpr double usual_air = 101325;  // Pa, of the standard atmosphere
constexpr int digits_shown = 3;

constexpr auto vacuum = Dimension::absolute_pressure;
constexpr auto local_air = Dimension::gauge_pressure;
constexpr auto between = Dimension::pressure_difference;

bool is_pressure(Dimension dimension) { return !zero_point(dimension).empty(); }

std::string all_of(Dimension dimension) {
    std::string list;
    for (const auto& unit : units_of(dimension))
        list += (list.empty() ? "" : ", ") + std::string(unit.text);
    return list;
}

// A size that leaves open where it counts from.
std::string open_complaint(const std::string& typed, const Measure& measure) {
    const bool short_ending = typed == "psi" || typed == "bar";
    return typed + " does not say whether it counts from vacuum (" + typed +
           (short_ending ? "a" : " abs") + ") or from the local air (" + typed +
           (short_ending ? "g" : " gauge") + "), and " + named(measure) + " is expected";
}

std::string reason(Dimension wanted) {
    if (wanted == between) return "; between two places neither counts: leave it out";
    return "; it is not converted, because that takes the air pressure of the day";
}

// The dimension a unit says of itself, where this is not the one that is wanted.
std::optional<Dimension> says(std::string_view unit, Dimension wanted) {
    for (const auto dimension : {local_air, vacuum})
        if (dimension != wanted && find_unit(dimension, unit)) return dimension;
    return std::nullopt;
}

std::string in_row(double si, const Row& row) {
    const auto& unit = unit_of(row.measure);
    const auto word = row.measure.dimension == vacuum ? " absolute" : " gauge";
    const bool plain = row.measure.dimension == between;
    const bool said = find_unit(row.measure.dimension, std::string(unit.text) + word);
    return readable_number(from_si(si, unit), digits_shown) + " " + std::string(unit.text) +
           (plain || !said ? "" : word);
}

}  // namespace

std::string_view zero_point(Dimension dimension) noexcept {
    switch (dimension) {
        case vacuum: return "above vacuum";
        case local_air: return "above the local air";
        case between: return "of difference";
        default: return {};
    }
}

std::string zero_point_complaint(std::string_view unit, const Measure& measure) {
    const auto wanted = measure.dimension;
    if (!is_pressure(wanted)) return {};
    if (wanted == vacuum && find_unit(between, unit))
        return open_complaint(std::string(unit), measure);
    const auto said = says(unit, wanted);
    if (!said) return {};
    return std::string(unit) + " counts from " + (*said == local_air ? "the local air" : "vacuum") +
           ", and " + named(measure) + " is expected (" + all_of(wanted) + ")" + reason(wanted);
}

std::string meant_pressure(std::string_view text, const Row& row) {
    const auto wanted = row.measure.dimension;
    const auto parts = take_apart(text);
    if (!parts || !is_pressure(wanted) || find_unit(wanted, parts->unit)) return {};
    const auto said = says(parts->unit, wanted);
    if (!said) return {};
    const auto typed = to_si(parts->number, *find_unit(*said, parts->unit));
    const bool open = find_unit(between, parts->unit) || wanted == between;
    const double shift = open ? 0 : *said == local_air ? usual_air : -usual_air;
    if (!typed || !range_complaint(*typed + shift, row, {}).empty()) return {};
    return in_row(*typed + shift, row);
}

}  // namespace windwall::fields
