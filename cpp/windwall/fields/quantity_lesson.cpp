#include "windwall/fields/quantity_lesson.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/meant_quantity.hpp"
#include "windwall/fields/pieces.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/units.hpp"
#include "windwall/fields/zero_point.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

namespace windwall::fields {
namespace {

constexpr std::size_t most_offered = 4;

bool counts_points(std::string_view unit) { return unit == "%"; }

std::string share_of(const std::string& number, const std::string& percent) {
    const double share =
        std::strtod(number.c_str(), nullptr) * std::strtod(percent.c_str(), nullptr);
    return std::isfinite(share) ? shortest(near(std::abs(share) / 100, 3)) : percent + " %";
}

// Where the ± of a text says nothing certain.
std::string sigma_complaint(const QuantityText& text, const Measure& measure) {
    const auto number = std::string(text.number), sigma = std::string(text.sigma);
    if (text.sigma_is_share && counts_points(text.unit))
        return "the ± could mean points or a share of the value; write \"" + number + " ± " +
               sigma + " %\" for points";
    if (text.sigma_is_share && measure.dimension == Dimension::temperature)
        return "a temperature has no percentage; write its ± in kelvin or degrees, as in \"" +
               number + " ± 2 " + std::string(text.unit) + "\"";
    if (!text.sigma.empty() && counts_points(text.unit) && measure.unit != "%")
        return "it could mean " + number + " with a ± of " + sigma + " % of it, or " + number +
               " %; write the value and its ± as plain numbers, as in " +
               in_quotes(number + " ± " + share_of(number, sigma));
    return {};
}

bool is_bare(const QuantityText& text, const Measure& measure) {
    return text.unit.empty() && !bare_number_is_enough(measure);
}

struct Offers {
    MeantQuantity beyond;  // the likeliest of all, where the row takes none
    std::vector<MeantQuantity> fitting;
};

// What a text was probably meant as, and the row takes.
Offers offers(std::string_view text, const Row& row) {
    Offers made;
    if (auto pressure = meant_pressure(text, row); !pressure.empty())
        return {{}, {{std::move(pressure), {}}}};
    for (auto& meant : meant_quantities(text, row.measure)) {
        const auto read = read_by_grammar(meant.text, row.measure);
        if (!read) continue;
        if (range_complaint(read->value, row, {}).empty())
            made.fitting.push_back(std::move(meant));
        else if (made.beyond.text.empty())
            made.beyond = std::move(meant);
    }
    return made;
}

// Of a number without its unit every unit might be meant; the row's own is asked for.
std::size_t most(std::string_view text, const Measure& measure) {
    const bool bare = kinds_of(pieces_of(text)).find(Piece::words) == std::string::npos;
    return bare && measure.unit != "%" ? 1 : most_offered;
}

std::string instead(const Offers& made, std::size_t most, const Row& row,
                    std::string_view example) {
    std::vector<std::string> words;
    for (const auto& meant : made.fitting)
        if (words.size() < most) words.push_back(in_quotes(meant.text));
    if (words.empty() && !example.empty()) words.push_back(in_quotes(example));
    const auto beyond = made.fitting.empty() && !made.beyond.text.empty()
                            ? "; " + made.beyond.text + " would be outside " + allowed_text(row)
                            : "";
    return beyond + (words.empty() ? "" : "; write for example " + choices(words));
}

// Why what does not begin with a number is none, where more can be said than that.
std::string why_no_number(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    if (length_of(text) > longest_quantity) return {};
    if (first == text.npos) return "there is nothing in it";
    const auto word = text.substr(first, std::min(text.find(' ', first), text.size()) - first);
    for (const std::string_view none : {"nan", "NaN", "inf", "-inf"})
        if (word == none) return std::string(none) + " is not a number";
    return {};
}

std::string broken_rule(std::string_view text, const Row& row, const Offers& made) {
    const auto& likeliest = made.fitting.empty() ? made.beyond : made.fitting.front();
    if (!likeliest.rule.empty()) return in_quotes(text) + ": " + std::string(likeliest.rule);
    const auto parts = take_apart(text);
    if (!parts) {
        const auto none = why_no_number(text);
        return in_quotes(text) + " is not understood: " + (none.empty() ? parts.violation : none);
    }
    if (is_bare(*parts, row.measure))
        return printable(text) + " what? " + named(row.measure) + " needs its unit";
    return in_quotes(text) + ": " + read_by_grammar(text, row.measure).violation;
}

}  // namespace

std::string quantity_lesson(std::string_view text, const Row& row, std::string_view example) {
    if (length_of(text) > longest_quantity)
        return broken_rule(text, row, {}) + instead({}, 1, row, example);
    if (const auto parts = take_apart(text))
        if (auto unclear = sigma_complaint(*parts, row.measure); !unclear.empty())
            return in_quotes(text) + ": " + unclear;
    const auto made = offers(text, row);
    return broken_rule(text, row, made) + instead(made, most(text, row.measure), row, example);
}

std::string unit_violation(const QuantityText& text, const Measure& measure) {
    if (is_bare(text, measure)) return "it needs its unit";
    if (!text.unit.empty() && !find_unit(measure.dimension, text.unit))
        return unit_complaint(text.unit, measure, false);
    return sigma_complaint(text, measure);
}

}  // namespace windwall::fields
