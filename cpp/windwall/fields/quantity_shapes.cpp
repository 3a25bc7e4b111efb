#include "windwall/fields/quantity_shapes.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/meant_unit.hpp"
#include "windwall/fields/readable.hpp"
#include "windwall/fields/units.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>

namespace windwall::fields {
namespace {

using Pieces = std::vector<Piece>;
using Meant = std::vector<MeantQuantity>;

constexpr int digits_kept = 6;  // of what is worked out of two numbers

constexpr std::string_view one_unit =
    "one unit serves the value and its ±, and stands at the end; only a percentage of the value "
    "follows the unit";
constexpr std::string_view share = "a percentage of the value follows the unit";
constexpr std::string_view fraction = "decimals are read, not fractions";
constexpr std::string_view ratio = "a ratio is stated as one number";
constexpr std::string_view sum = "one number with one unit is read, not two to be added";
constexpr std::string_view range =
    "what lies between two numbers is stated as the middle and how far it may be off";
constexpr std::string_view clock = "a time is stated as one number, not as on a clock";
constexpr std::string_view twice = "a value has one ±";
constexpr std::string_view parted = "the digits of a number stand together";

double valued(const Piece& number) { return std::strtod(number.text.c_str(), nullptr); }

// Nothing where no double holds it, of which no quantity is made.
std::string rounded(double number) {
    return std::isfinite(number) ? shortest(near(number, digits_kept)) : std::string();
}

std::string spread(const std::string& value, const std::string& sigma) {
    return value + " ± " + sigma;
}

std::string with_unit(const std::string& number, std::string_view unit) {
    return unit.empty() ? number : number + " " + std::string(unit);
}

// The number of a piece in another unit, as a difference.
std::optional<double> turned(const Piece& number, std::string_view from, std::string_view into,
                             Dimension dimension) {
    const auto* here = find_unit(dimension, from);
    const auto* there = find_unit(dimension, into);
    const auto si = here ? to_si(number.text, *here, Counted::difference) : std::nullopt;
    if (!si || !there) return std::nullopt;
    return from_si(*si, *there, Counted::difference);
}

// The row's own unit first.
std::vector<std::string> every_unit(const Measure& measure) {
    std::vector<std::string> units{std::string(measure.unit)};
    if (measure.unit.empty()) return units;
    for (const auto& unit : units_of(measure.dimension))
        if (unit.text != measure.unit && !unit.text.empty()) units.emplace_back(unit.text);
    return units;
}

// The pieces without the words at the end, which are the unit.
struct Shape {
    const Pieces& pieces;
    const Measure& measure;
    std::string_view unit;

    const std::string& text(std::size_t at) const { return pieces[at].text; }
    double number(std::size_t at) const { return valued(pieces[at]); }

    std::vector<std::string> units() const {
        return unit.empty() ? every_unit(measure) : meant_units(unit, measure);
    }

    Meant in_units(const std::string& said, std::string_view rule = {}) const {
        Meant made;
        for (const auto& one : units())
            made.push_back({with_unit(said, one), std::string(rule)});
        return made;
    }

    Meant value() const {
        auto made = in_units(text(0));
        const bool may_be_share = unit.empty() && measure.unit == "%";
        if (may_be_share && number(0) > 0 && number(0) <= 1)
            made.insert(made.begin(), {rounded(100 * number(0)) + " %", {}});
        return made;
    }

    // "120 ± 10 kg", and "120 ± 10 % kg".
    Meant value_and_spread() const {
        if (!unit.starts_with('%') || measure.unit == "%")
            return in_units(spread(text(0), text(2)));
        Meant made;
        const auto behind = unit.substr(std::min(unit.find_first_not_of("% "), unit.size()));
        for (const auto& one : Shape{pieces, measure, behind}.units())
            made.push_back({with_unit(text(0), one) + " ± " + text(2) + " %", std::string(share)});
        return made;
    }

    // "120 kg ± 10", "120 kg ± 10 kg", "1 m ± 5 mm", "120 kg ± 10 % of it".
    Meant spread_behind_its_unit() const {
        Meant made;
        for (const auto& one : meant_units(text(1), measure)) {
            const bool of_the_value = unit.starts_with('%') && one != "%";
            const auto said = of_the_value ? with_unit(text(0), one) + " ± " + text(3) + " %"
                                           : with_unit(spread(text(0), spread_in(one)), one);
            made.push_back({said, std::string(one_unit)});
        }
        return made;
    }

    std::string spread_in(const std::string& wanted) const {
        const auto own = unit.empty() ? std::vector{wanted} : meant_units(unit, measure);
        if (own.empty() || own[0] == wanted) return text(3);
        const auto there = turned(pieces[3], own[0], wanted, measure.dimension);
        return there ? rounded(*there) : text(3);
    }

    // "3/4 in", "1 3/4 in", "41:11".
    Meant divided(std::size_t at, double whole, std::string_view rule) const {
        if (number(at + 2) == 0) return {};
        return in_units(rounded(whole + std::abs(number(at)) / number(at + 2)), rule);
    }

    // "41:11" of a plain number, "1:30 h" of a time.
    Meant parted_by_a_colon() const {
        if (measure.dimension == Dimension::number) return divided(0, 0, ratio);
        const bool time =
            measure.dimension == Dimension::time || measure.dimension == Dimension::labour;
        return time ? in_units(rounded(number(0) + number(2) / 60), clock) : Meant{};
    }

    // "345-355 kg", "345 to 355 kg".
    Meant between(std::size_t other) const {
        const double low = number(0), high = std::abs(number(other));
        if (high <= low) return {};
        return in_units(spread(rounded((low + high) / 2), rounded((high - low) / 2)), range);
    }

    // "5 ft 3 in"
    Meant added() const {
        const auto large = meant_units(text(1), measure), small = meant_units(unit, measure);
        if (large.empty() || small.empty() || large[0].empty()) return {};
        const auto more = turned(pieces[2], small[0], large[0], measure.dimension);
        if (!more) return {};
        return {{with_unit(rounded(number(0) + *more), large[0]), std::string(sum)}};
    }

    Meant numbers_parted_by_words() const {
        const auto& words = text(1);
        if (words == "to" && text(2) == "1") return in_units(text(0), ratio);
        const bool ends = words == "to" || words == "-" || words == ".." || words == "...";
        return ends ? between(2) : added();
    }

    Meant two_numbers() const {
        if (text(1).starts_with('-')) return between(1);
        const bool thousands = text(1).size() == 3 && text(0).size() <= 3;
        return thousands ? in_units(text(0) + text(1), parted) : Meant{};
    }
};

}  // namespace

Meant read_shape(const Pieces& pieces, const Measure& measure) {
    auto kinds = kinds_of(pieces);
    Shape shape{pieces, measure, {}};
    if (kinds.size() > 1 && kinds.back() == Piece::words) {
        shape.unit = pieces.back().text;
        kinds.pop_back();
    }
    if (kinds == "N") return shape.value();
    if (kinds == "NPN") return shape.value_and_spread();
    if (kinds == "NWPN") return shape.spread_behind_its_unit();
    if (kinds == "N/N") return shape.divided(0, 0, fraction);
    if (kinds == "NN/N") return shape.divided(1, shape.number(0), fraction);
    if (kinds == "N:N") return shape.parted_by_a_colon();
    if (kinds == "NWN") return shape.numbers_parted_by_words();
    if (kinds == "NN") return shape.two_numbers();
    if (kinds.starts_with("NPNP"))
        return shape.in_units(spread(pieces[0].text, pieces[2].text), twice);
    return kinds.starts_with("NP") ? shape.in_units(pieces[0].text) : Meant{};
}

}  // namespace windwall::fields
