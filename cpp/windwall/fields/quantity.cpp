#include "windwall/fields/quantity.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity_lesson.hpp"
#include "windwall/fields/quantity_text.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/zero_point.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::fields {
namespace {

using Refusal = Expected<Quantity>;

std::optional<double> sigma_of(const QuantityText& text, const Unit& unit, double value) {
    if (!text.sigma_is_share) return to_si(text.sigma, unit, Counted::difference);
    const auto percent = to_si(text.sigma, unit_of(number()));
    if (!percent) return std::nullopt;
    return std::abs(value) * *percent / 100;
}

// A row that takes every number of a measure that may be meant, in each of its units.
Row any(const Measure& measure) {
    constexpr double endless = 1e290;
    return optional("", "", {}, measure, {-endless, endless}, "");
}

std::string in_unit_of(std::string_view number, const Row& row) {
    auto text = std::string(number);
    if (!row.measure.unit.empty()) text += " " + std::string(row.measure.unit);
    return text;
}

std::string usual(double number, const Row& row) {
    return in_unit_of(shortest(std::clamp(number, row.range.low, row.range.high)), row);
}

// Of a number that Python gave without its unit.
std::string instead(std::string_view digits, const Row& row) {
    const auto si = to_si(digits, unit_of(row.measure));
    const bool likely = si && range_complaint(*si, row, {}).empty();
    return "; write for example " + in_quotes(likely ? in_unit_of(digits, row) : example_text(row));
}

}  // namespace

Expected<Quantity> read_by_grammar(std::string_view text, const Measure& measure) {
    const auto parts = take_apart(text);
    if (!parts) return Refusal::refused(parts.violation);
    if (auto wrong = unit_violation(*parts, measure); !wrong.empty())
        return Refusal::refused(wrong);
    const auto& unit =
        parts->unit.empty() ? unit_of(measure) : *find_unit(measure.dimension, parts->unit);
    const auto value = to_si(parts->number, unit);
    if (!value) return Refusal::refused("it is beyond any number this can hold");
    Quantity made{*value, {}, &unit, std::string(text)};
    if (!parts->sigma.empty()) {
        made.sigma = sigma_of(*parts, unit, *value);
        if (!made.sigma) return Refusal::refused("its ± is beyond any number");
    }
    return made;
}

Expected<Quantity> read_quantity(std::string_view text, const Measure& measure,
                                 std::string_view example) {
    auto made = read_by_grammar(text, measure);
    return made ? made : Refusal::refused(quantity_lesson(text, any(measure), example));
}

Expected<Quantity> read_quantity(std::string_view text, const Row& row) {
    auto made = read_by_grammar(text, row.measure);
    if (!made) return Refusal::refused(quantity_lesson(text, row, example_text(row)));
    if (auto outside = range_complaint(made->value, row, text); !outside.empty())
        return Refusal::refused(outside);
    return made;
}

bool bare_number_is_enough(const Measure& measure) {
    return measure.unit.empty() || measure.dimension == Dimension::labour;
}

Expected<Quantity> read_bare_number(double number, const Row& row) {
    const auto text = shortest(number);
    if (!bare_number_is_enough(row.measure))
        return Refusal::refused(quantity_lesson(text, row, example_text(row)));
    const auto& unit = unit_of(row.measure);
    const double si = to_si(number, unit);
    if (auto outside = range_complaint(si, row, text); !outside.empty())
        return Refusal::refused(outside);
    return Quantity{si, {}, &unit, text};
}

Range range_in_si(const Row& row) {
    const auto& unit = unit_of(row.measure);
    return {to_si(row.range.low, unit), to_si(row.range.high, unit)};
}

std::string range_complaint(double si, const Row& row, std::string_view typed) {
    if (allowed(si, row, range_in_si(row))) return {};
    return printable(typed) + " is outside " + allowed_text(row);
}

bool allowed(double si, const Row& row, const Range& range) noexcept {
    return si >= range.low && si <= range.high && (!row.whole || si == std::round(si));
}

Expected<Quantity> read_si(double si, const Row& row) {
    const auto& unit = unit_of(row.measure);
    if (!std::isfinite(si)) return Refusal::refused("not a finite number");
    auto reading = shortest(si);
    if (const auto* base = si_unit_of(unit.dimension); base && !base->text.empty())
        reading += " " + std::string(base->text);
    if (range_complaint(si, row, reading).empty()) return Quantity{si, {}, &unit, format(si, unit)};
    auto sentence = reading;
    if (!unit.text.empty() && !reading.ends_with(" " + std::string(unit.text)))
        sentence += " is about " + readable_number(from_si(si, unit), 4) + " " +
                    std::string(unit.text) + " and";
    else
        sentence += " is";
    return Refusal::refused(sentence + " outside " + allowed_text(row) +
                            instead(shortest(si), row));
}

std::string format(double si, const Unit& unit) {
    auto text = shortest(si, unit);
    const auto* base = si_unit_of(unit.dimension);
    if (base && base != &unit && to_si(text, unit) != si) return format(si, *base);
    if (!unit.text.empty()) text += " " + std::string(unit.text);
    return text;
}

std::string format(double si, const Measure& measure) { return format(si, unit_of(measure)); }

std::string range_text(const Row& row) {
    const auto counted = std::string(zero_point(row.measure.dimension));
    return in_unit_of(shortest(row.range.low) + " to " + shortest(row.range.high), row) +
           (counted.empty() ? "" : " " + counted);
}

std::string allowed_text(const Row& row) {
    return (row.whole ? "the whole numbers " : "") + range_text(row);
}

std::string example_text(const Row& row) {
    const auto [low, high] = row.range;
    // The middle of what money and work may be is what nobody spends.
    if (row.measure.dimension == Dimension::money) return usual(200, row);
    if (row.measure.dimension == Dimension::labour) return usual(5, row);
    const bool spans_decades = low > 0 && high > 10 * low;
    const double middle = spans_decades ? std::sqrt(low * high) : (low + high) / 2;
    const double about = row.whole ? std::round(middle) : near(middle, 2);
    const double number = std::clamp(about, low, high);
    return in_unit_of(shortest(number), row);
}

}  // namespace windwall::fields
