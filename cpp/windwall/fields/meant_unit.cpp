#include "windwall/fields/meant_unit.hpp"

#include "windwall/fields/nearest.hpp"
#include "windwall/fields/units.hpp"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <string>

namespace windwall::fields {
namespace {

// What people say for a unit, in small letters and without blanks.
struct Said {
    std::string_view unit;
    std::string_view words;
};
constexpr Said said[] = {
    {"degC", "c|celsius|oc|degreec|degreecelsius"},
    {"degF", "f|of|fahrenheit|degreef|degreefahrenheit"},
    {"K", "kelvin"},
    {"%", "percent|%rh|pct"},
    {"mbar", "mb|millibar"},
    {"kg", "kilo|kilogram"},
    {"g", "gram"},
    {"lb", "pound"},
    {"lbf", "pound"},
    {"GBP", "pound"},
    {"m", "metre|meter"},
    {"mm", "millimetre|millimeter"},
    {"cm", "centimetre|centimeter"},
    {"km", "kilometre|kilometer"},
    {"in", "inche|\""},
    {"ft", "foot|feet|'"},
    {"km/h", "kmh|km/hr|kmph"},
    {"mph", "mile/h|miles/h|miles/hour|milesperhour|mile/hour|mileperhour"},
    {"L", "litre|liter"},
    {"cm3", "ccm"},
    {"s", "second|sec"},
    {"min", "minute"},
    {"h", "hour|hr"},
    {"EUR", "euro"},
    {"USD", "dollar"},
    {"deg", "degree"},
    {"W", "watt"},
    {"kW", "kilowatt"},
    {"rpm", "rev|u/min"},
};

// Without the s of a plural.
std::string_view ends_off(std::string_view text) {
    return text.size() > 1 && text.ends_with('s') ? text.substr(0, text.size() - 1) : text;
}

// Small letters, no blanks, points, dots or hyphens, no s of a plural.
std::string worn(std::string_view typed) {
    std::string text;
    for (std::size_t at = 0; at < typed.size(); ++at) {
        if (typed.substr(at).starts_with("°")) {
            text += "deg";
            ++at;
        } else if (std::string_view(" .-*^").find(typed[at]) == std::string_view::npos) {
            text += static_cast<char>(std::tolower(static_cast<unsigned char>(typed[at])));
        }
    }
    return std::string(ends_off(text));
}

bool is_spelt_like(const Unit& unit, std::string_view text) {
    const auto like = [&](std::string_view one) { return worn(one) == text; };
    return like(unit.text) || std::ranges::any_of(entries(unit.aliases), like);
}

std::vector<std::string_view> said_for(const Unit& unit) {
    const auto found = std::ranges::find(said, unit.text, &Said::unit);
    return found == std::end(said) ? std::vector<std::string_view>{} : entries(found->words);
}

bool is_said_for(const Unit& unit, std::string_view text) {
    return std::ranges::any_of(said_for(unit), [&](auto one) { return ends_off(one) == text; });
}

// The word behind a blank or at the start, and a blank or comma or nothing behind it.
bool names(std::string_view choices, std::string_view word) {
    const auto text = " " + std::string(choices) + " ";
    return std::ranges::any_of(std::string_view(" ,"), [&](char end) {
        return !word.empty() && text.find(" " + std::string(word) + end) != std::string::npos;
    });
}

std::string_view choices_of(std::string_view typed) {
    const auto found = std::ranges::find(ambiguous_units(), typed, &Ambiguous::text);
    const bool of_the_same_number = found != ambiguous_units().end() && found->same_number;
    return of_the_same_number ? found->choices : std::string_view{};
}

using Units = std::vector<std::string>;

template <class Test>
Units those(Dimension dimension, Test test) {
    Units found;
    for (const auto& unit : units_of(dimension))
        if (!unit.text.empty() && test(unit)) found.emplace_back(unit.text);
    return found;
}

Units likely(std::string_view typed, const Measure& measure) {
    const auto text = worn(typed);
    const auto spelt = [&](const Unit& unit) { return is_spelt_like(unit, text); };
    const auto spoken = [&](const Unit& unit) { return is_said_for(unit, text); };
    if (auto units = units_among(choices_of(typed), measure.dimension); !units.empty())
        return units;
    if (auto units = those(measure.dimension, spelt); !units.empty()) return units;
    // 14.7 PSI of a pressure that counts from vacuum.
    const auto from_vacuum = [&](const Unit& unit) {
        return is_spelt_like(unit, text + "a") || is_spelt_like(unit, text + "ab");
    };
    if (measure.dimension == Dimension::absolute_pressure)
        if (auto units = those(measure.dimension, from_vacuum); !units.empty()) return units;
    return those(measure.dimension, spoken);
}

Units near_to(std::string_view typed, const Measure& measure) {
    const auto text = worn(typed);
    // The start of what is asked for: 60 W of a W/K, 20 deg of a degC.
    if (!text.empty() && worn(measure.unit).starts_with(text)) return {std::string(measure.unit)};
    // A unit of something else is no slip.
    if (std::ranges::find(all_units(), typed, &Unit::text) != all_units().end()) return {};
    std::vector<std::string_view> words, meant;
    for (const auto& unit : units_of(measure.dimension)) {
        auto more = said_for(unit);
        more.push_back(unit.text);
        words.insert(words.end(), more.begin(), more.end());
        meant.resize(words.size(), unit.text);
    }
    const auto found = std::ranges::find(words, nearest(text, words));
    if (found == words.end() || found->empty()) return {};
    return {std::string(meant[static_cast<std::size_t>(found - words.begin())])};
}

}  // namespace

std::vector<std::string> units_among(std::string_view choices, Dimension dimension) {
    return those(dimension, [&](const Unit& unit) { return names(choices, unit.text); });
}

std::vector<std::string> meant_units(std::string_view typed, const Measure& measure) {
    if (measure.dimension == Dimension::number && measure.unit.empty())
        return {typed == "%" ? "%" : ""};
    if (find_unit(measure.dimension, typed)) return {std::string(typed)};
    if (auto units = likely(typed, measure); !units.empty()) return units;
    if (const auto end = typed.find(' '); end != typed.npos)
        if (auto units = likely(typed.substr(0, end), measure); !units.empty()) return units;
    return near_to(typed, measure);
}

}  // namespace windwall::fields
