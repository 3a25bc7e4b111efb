#include "windwall/fields/units.hpp"

#include "windwall/fields/meant_unit.hpp"
#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/zero_point.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <stdexcept>
#include <utility>
#include <vector>

namespace windwall::fields {
namespace {

constexpr std::array<std::string_view, 31> names{
    "plain number",
    "length",
    "area",
    "volume",
    "mass",
    "time",
    "speed",
    "acceleration",
    "rotational speed",
    "angle",
    "force",
    "torque",
    "pressure above vacuum",
    "pressure above the local air",
    "pressure difference",
    "temperature",
    "temperature difference",
    "power",
    "energy",
    "mass flow",
    "volume flow",
    "density",
    "moment of inertia",
    "heat conductance",
    "energy per mass",
    "mass per length",
    "number per length",
    "viscosity",
    "stiffness",
    "sum of money",
    "time of work",
};

constexpr std::size_t longest_unit = 64;  // bytes; the signs are changed one by one

// Other ways of typing the same signs.
constexpr Replacement signs[] = {
    {"^2", "2"}, {"^3", "3"}, {"²", "2"}, {"³", "3"}, {"·", " "}, {"*", " "}, {"°", "deg"},
};

std::string plain_signs(std::string_view typed) { return replaced(typed, signs); }

bool spelt(const Unit& unit, std::string_view text) {
    return unit.text == text || std::ranges::count(entries(unit.aliases), text) > 0;
}

std::string list_of(Dimension dimension) {
    std::string list;
    for (const auto& unit : units_of(dimension))
        if (!unit.text.empty()) list += (list.empty() ? "" : ", ") + std::string(unit.text);
    return list;
}

const Unit* of_another(std::string_view text, Dimension dimension) {
    for (const auto& unit : all_units())
        if (unit.dimension != dimension && spelt(unit, text)) return &unit;
    return nullptr;
}

// A spelling that stands for units of this dimension among others.
std::string ambiguity(std::string_view typed, Dimension dimension) {
    const auto found = std::ranges::find(ambiguous_units(), typed, &Ambiguous::text);
    if (found == ambiguous_units().end()) return {};
    const auto units = units_among(found->choices, dimension);
    if (units.empty()) return {};
    if (units.size() == 1 && found->same_number)
        return printable(typed) + " is written " + in_quotes(units[0]) + " here";
    return printable(typed) + " could mean several things; say " + std::string(found->choices);
}

// A pressure's size is what it is in capitals too, and says as little of where it counts from.
std::string in_usual_capitals(std::string_view text, Dimension wanted) {
    const auto lower = [](unsigned char letter) { return std::tolower(letter); };
    const auto like = [&](const Unit& unit) {
        return std::ranges::equal(unit.text, text, {}, lower, lower);
    };
    const auto sizes = units_of(Dimension::pressure_difference);
    const auto found = std::ranges::find_if(sizes, like);
    const bool known = std::ranges::any_of(units_of(wanted), like);
    return std::string(known || found == sizes.end() ? text : found->text);
}

std::string near_to(std::string_view text, Dimension dimension) {
    std::vector<std::string_view> words;
    for (const auto& unit : units_of(dimension))
        words.push_back(unit.text);
    const auto near = nearest(text, words);
    return near.empty() ? "" : "; did you mean " + std::string(near) + "?";
}

}  // namespace

std::vector<std::string_view> entries(std::string_view list) {
    std::vector<std::string_view> found;
    for (std::size_t start = 0, end = 0; start < list.size(); start = end + 1) {
        end = std::min(list.find('|', start), list.size());
        found.push_back(list.substr(start, end - start));
    }
    return found;
}

std::span<const Unit> units_of(Dimension dimension) {
    const auto units = all_units();
    const auto first = std::ranges::lower_bound(units, dimension, {}, &Unit::dimension);
    const auto last = std::ranges::upper_bound(units, dimension, {}, &Unit::dimension);
    return {first, last};
}

const Unit* find_unit(Dimension dimension, std::string_view typed) {
    if (typed.size() > longest_unit) return nullptr;
    const auto plain = plain_signs(typed);
    for (const auto& unit : units_of(dimension))
        if (spelt(unit, plain)) return &unit;
    return nullptr;
}

const Unit& unit_of(const Measure& measure) {
    if (const auto* unit = find_unit(measure.dimension, measure.unit)) return *unit;
    throw std::logic_error("no " + std::string(name_of(measure.dimension)) + " has the unit \"" +
                           std::string(measure.unit) + "\"");
}

const Unit* si_unit_of(Dimension dimension) {
    if (dimension == Dimension::money) return nullptr;
    const auto is_si = [](const Unit& unit) {
        return unit.factor == "1" && unit.divisor == "1" && unit.shift == "0";
    };
    const auto units = units_of(dimension);
    const auto found = std::ranges::find_if(units, is_si);
    return found == units.end() ? nullptr : &*found;
}

const Unit& unit_in(const Measure& measure, System system) {
    const auto& unit = unit_of(measure);
    if (unit.system == system || unit.other.empty()) return unit;
    return unit_of({measure.dimension, unit.other});
}

std::string_view name_of(Dimension dimension) {
    return names.at(static_cast<std::size_t>(dimension));
}

std::string named(const Measure& measure) {
    if (measure.unit == "%") return "a percentage";
    const auto name = std::string(name_of(measure.dimension));
    return (std::string_view("aeiou").find(name.front()) == std::string_view::npos ? "a " : "an ") +
           name;
}

std::string unit_complaint(std::string_view typed, const Measure& measure, bool guess) {
    const auto text = plain_signs(typed.substr(0, longest_unit));
    const auto shown = printable(typed);
    if (auto pressure = zero_point_complaint(in_usual_capitals(text, measure.dimension), measure);
        !pressure.empty())
        return pressure;
    if (auto choice = ambiguity(typed, measure.dimension); !choice.empty()) return choice;
    const bool plain = measure.dimension == Dimension::number && measure.unit != "%";
    const auto units = plain ? "" : list_of(measure.dimension);
    const auto expected =
        named(measure) + " is expected" + (units.empty() ? "" : " (" + units + ")");
    if (const auto* other = of_another(text, measure.dimension))
        return shown + " is the unit of " + named({other->dimension, other->text}) + ", and " +
               expected;
    return shown + " is no unit known here; " + expected +
           (guess ? near_to(text, measure.dimension) : "");
}

}  // namespace windwall::fields
