#pragma once
#include "windwall/fields/units.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

/// Decimal text and SI doubles, scaled exactly and rounded once, so that 1.6 km is 1600 m.
namespace windwall::fields {

/// Whether a number states a level, counted from the unit's zero, or a difference, such as a sigma.
enum class Counted { level, difference };

/// How many leading characters form a number as JSON writes them; 0 where none do.
std::size_t number_length(std::string_view text);

/// The SI value of a decimal text; empty where it is no number, one no double can hold, or longer
/// than 400 characters, since the work grows with the square of that.
std::optional<double> to_si(std::string_view decimal, const Unit& unit,
                            Counted as = Counted::level);

/// The SI value of a number that was written down in decimal, such as a row's limit.
double to_si(double number, const Unit& unit, Counted as = Counted::level);

/// The number of units nearest to an SI value.
double from_si(double si, const Unit& unit, Counted as = Counted::level);

/// The shortest decimal text that `to_si` turns back into exactly this value, to 17 digits; only a
/// temperature next to absolute zero, seen from a far zero point, would need more.
std::string shortest(double si, const Unit& unit, Counted as = Counted::level);

/// The shortest decimal text of a plain number.
std::string shortest(double number);

}  // namespace windwall::fields
