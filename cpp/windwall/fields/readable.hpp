#pragma once
#include "windwall/fields/measure.hpp"
#include "windwall/fields/units.hpp"

#include <string>

namespace windwall::fields {

/// A number for people: in the unit of their system, to so many significant digits, never with
/// digits before the point rounded away. Not finite is "unknown".
std::string readable(double si, const Measure& measure, System system = System::metric,
                     int significant_digits = 3);

/// The same without its unit, for columns that name it once.
std::string readable_number(double number, int significant_digits = 3);

/// The double nearest to what it is to so many significant digits.
double near(double number, int significant_digits);

}  // namespace windwall::fields
