#pragma once
#include "windwall/fields/measure.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// The two habits of the trade; a unit belongs to one and names its counterpart in the other.
enum class System { metric, us };

/// One unit of one dimension: SI value = (number + shift) × factor / divisor, all decimal and
/// exact. Money counts in its own currency and labour in hours; everything else counts in SI.
struct Unit {
    Dimension dimension{};
    std::string_view text;           // as windwall writes it
    std::string_view factor;         // decimal text
    std::string_view divisor = "1";  // decimal text
    std::string_view udunits = "1";  // the same unit for netCDF attributes
    std::string_view other = {};     // what the other system uses in its place
    System system = System::metric;
    std::string_view aliases = {};  // further spellings, separated by '|'
    std::string_view shift = "0";   // of the zero point, for temperature levels
};

/// The closed table: units of a scenario file are these and no others.
std::span<const Unit> all_units();
std::span<const Unit> units_of(Dimension dimension);

/// The unit a text means in a field of this dimension, or null. `·`, `*`, `^2`, `²` and `°` are
/// read as the table's ` `, `2` and `deg`.
const Unit* find_unit(Dimension dimension, std::string_view typed);

/// The unit a row names; throws std::logic_error where a row names none of the table.
const Unit& unit_of(const Measure& measure);

/// The unit that values inside are held in; null for money, which has one per currency.
const Unit* si_unit_of(Dimension dimension);

/// The unit summaries use for this measure in this system.
const Unit& unit_in(const Measure& measure, System system);

/// The dimension in the trade's words: "pressure above the local air".
std::string_view name_of(Dimension dimension);

/// What stands between the strokes of a list such as `aliases`.
std::vector<std::string_view> entries(std::string_view list);

/// The same as it is asked for: "a length", "an area", "a percentage", "a plain number".
std::string named(const Measure& measure);

/// Why this text is no unit for this measure: what it is instead, what to choose between, or, as a
/// guess, what it nearly is.
std::string unit_complaint(std::string_view typed, const Measure& measure, bool guess = true);

/// Spellings that mean different things to different people, and what to write instead.
struct Ambiguous {
    std::string_view text;
    std::string_view choices;
    bool same_number = true;  // whether the number in front of it stays as it is
};
std::span<const Ambiguous> ambiguous_units();

}  // namespace windwall::fields
