#include "windwall/fields/quantity.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity_text.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/zero_point.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::fields {
namespace {

using Refusal = Expected<Quantity>;

std::string instead(std::string_view example) {
    return example.empty() ? "" : "; write for example " + in_quotes(example);
}

bool counts_points(const Unit& unit) { return unit.text == "%"; }

std::string unit_missing(std::string_view text, const Measure& measure, std::string_view example) {
    const auto otherwise = std::string(text) + " " + std::string(measure.unit);
    return printable(text) + " what? " + named(measure) + " needs its unit; write for example " +
           in_quotes(example.empty() ? otherwise : example);
}

// Where the ± of a text says nothing certain.
std::string sigma_complaint(const QuantityText& text, const Unit& unit, const Measure& measure) {
    if (text.sigma.empty()) return {};
    const auto number = std::string(text.number), sigma = std::string(text.sigma);
    if (text.sigma_is_share && counts_points(unit))
        return "the ± could mean points or a share of the value; write \"" + number + " ± " +
               sigma + " %\" for points";
    if (text.sigma_is_share && measure.dimension == Dimension::temperature)
        return "a temperature has no percentage; write its ± in kelvin or degrees, as in \"" +
               number + " ± 2 " + std::string(unit.text) + "\"";
    if (!text.sigma_is_share && counts_points(unit) && measure.unit != "%")
        return "it could mean " + number + " with a ± of " + sigma + " % of it, or " + number +
               " %; write the value and its ± as plain numbers, as in \"0.82 ± 0.04\"";
    return {};
}

std::optional<double> sigma_of(const QuantityText& text, const Unit& unit, double value) {
    if (!text.sigma_is_share) return to_si(text.sigma, unit, Counted::difference);
    const auto percent = to_si(text.sigma, unit_of(number()));
    if (!percent) return std::nullopt;
    return std::abs(value) * *percent / 100;
}

std::string in_unit_of(std::string_view number, const Row& row) {
    auto text = std::string(number);
    if (!row.measure.unit.empty()) text += " " + std::string(row.measure.unit);
    return text;
}

// What was probably meant: the number as typed in the row's unit, where its range allows that.
std::string likely_text(std::string_view text, const Row& row) {
    if (auto meant = meant_pressure(text, row); !meant.empty()) return meant;
    const auto digits = text.substr(0, number_length(text));
    const auto si = to_si(digits, unit_of(row.measure));
    if (!si || !range_complaint(*si, row, {}).empty()) return example_text(row);
    return in_unit_of(digits, row);
}

}  // namespace

Expected<Quantity> read_quantity(std::string_view text, const Measure& measure,
                                 std::string_view example) {
    const auto shown = in_quotes(text);
    const auto parts = take_apart(text);
    if (!parts)
        return Refusal::refused(shown + " is not understood: " + parts.violation +
                                instead(example));
    const auto* unit = find_unit(measure.dimension, parts->unit);
    // A percentage says its sign, as a length says its unit.
    const bool bare = parts->unit.empty() && !bare_number_is_enough(measure);
    if (bare) return Refusal::refused(unit_missing(text, measure, example));
    if (!unit && parts->unit.empty()) unit = &unit_of(measure);
    if (!unit)
        return Refusal::refused(shown + ": " + unit_complaint(parts->unit, measure) +
                                instead(example));
    if (auto unclear = sigma_complaint(*parts, *unit, measure); !unclear.empty())
        return Refusal::refused(shown + ": " + unclear);
    const auto value = to_si(parts->number, *unit);
    if (!value) return Refusal::refused(shown + " is beyond any number this can hold");
    Quantity made{*value, {}, unit, std::string(text)};
    if (!parts->sigma.empty()) {
        made.sigma = sigma_of(*parts, *unit, *value);
        if (!made.sigma) return Refusal::refused(shown + ": its ± is beyond any number");
    }
    return made;
}

Expected<Quantity> read_quantity(std::string_view text, const Row& row) {
    auto made = read_quantity(text, row.measure);
    // Once more with an example, which only a complaint has use for.
    if (!made) return read_quantity(text, row.measure, likely_text(text, row));
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
        return Refusal::refused(unit_missing(text, row.measure, likely_text(text, row)));
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
                            instead(likely_text(shortest(si), row)));
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
    const bool spans_decades = low > 0 && high > 10 * low;
    const double middle = spans_decades ? std::sqrt(low * high) : (low + high) / 2;
    const double about = row.whole ? std::round(middle) : near(middle, 2);
    const double number = std::clamp(about, low, high);
    return in_unit_of(shortest(number), row);
}

}  // namespace windwall::fields
