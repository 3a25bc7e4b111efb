#pragma once
#include "windwall/fields/expected.hpp"
#include "windwall/fields/measure.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace windwall::fields {

/// A number as a file states it.
struct Quantity {
    double value{};               // SI
    std::optional<double> sigma;  // SI, one standard deviation; a difference, also for temperatures
    const Unit* unit{};           // as typed
    std::string text;             // as typed
};

/// Reads "36 mm", "0.56 ± 0.05 m2", "0 +/- 1 m/s", "38 kPa ± 5 %" (of the value) or "35 ± 5 %"
/// (points of a percentage). `example` stands in the complaint as what to write instead.
Expected<Quantity> read_quantity(std::string_view text, const Measure& measure,
                                 std::string_view example = {});

/// The same, held against the row's range.
Expected<Quantity> read_quantity(std::string_view text, const Row& row);

/// The same by the grammar alone, without a word of what was meant instead.
Expected<Quantity> read_by_grammar(std::string_view text, const Measure& measure);

/// Whether a bare number says all there is to say: plain numbers and hours of work.
bool bare_number_is_enough(const Measure& measure);

/// A number without a unit, as JSON or Python gives it, refused where the measure has a unit.
Expected<Quantity> read_bare_number(double number, const Row& row);

/// Whether a row takes a value: within its range in SI, and whole where things are counted.
bool allowed(double si, const Row& row, const Range& range) noexcept;

/// Empty, or why the row does not take a value; `typed` is how the file states it.
std::string range_complaint(double si, const Row& row, std::string_view typed);

/// The row's range in SI.
Range range_in_si(const Row& row);

/// An SI number from Python, refused outside the row's range with both readings of it.
Expected<Quantity> read_si(double si, const Row& row);

/// "8 mm": an SI value in a unit, in the shortest text that reads back to the same value;
/// in the unit of SI where this one cannot say it in 17 digits.
std::string format(double si, const Unit& unit);
std::string format(double si, const Measure& measure);

/// "8 to 120 mm", "45 to 110 kPa above vacuum": the row's range.
std::string range_text(const Row& row);
/// The same, with what else is asked of a value: "the whole numbers 1 to 12".
std::string allowed_text(const Row& row);

/// A text the row accepts: its default where it has one, otherwise one from inside its range.
std::string example_text(const Row& row);

}  // namespace windwall::fields
