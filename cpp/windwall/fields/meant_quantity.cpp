#include "windwall/fields/meant_quantity.hpp"

#include "windwall/fields/meant_unit.hpp"
#include "windwall/fields/pieces.hpp"
#include "windwall/fields/quantity_shapes.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

constexpr std::string_view sign = "how far a value may be off is set off by ± or +/-";
constexpr std::string_view point = "decimals are set off by a point, not a comma";
constexpr std::string_view thousands =
    "decimals are set off by a point, not a comma, and thousands by nothing";
constexpr std::string_view how_it_starts = "a value starts with a digit or a minus sign";
constexpr std::string_view last = "a digit must follow the decimal point";
constexpr std::string_view blanks = "nothing but blanks may part a number from its unit";

bool holds(std::string_view text, std::string_view part) { return text.find(part) != text.npos; }

bool starts_with_a_number(std::string_view text) {
    const auto at = text.find_first_not_of(" -");
    return at != text.npos && text[at] >= '0' && text[at] <= '9';
}

bool ends_in_a_point(const std::vector<Piece>& pieces, std::string_view text) {
    return std::ranges::any_of(pieces, [&](const Piece& piece) {
        const auto pointed = piece.text + ".";
        const auto at = text.find(pointed);
        const auto behind = at == text.npos ? text.npos : at + pointed.size();
        return piece.kind == Piece::number && at != text.npos &&
               (behind == text.size() || text[behind] == ' ');
    });
}

// The rule that the signs of a text break, whatever its shape is.
std::string_view broken_by_signs(std::string_view text, const std::vector<Piece>& pieces) {
    if (holds(text, ",")) return without_commas(text).size() > 1 ? thousands : point;
    if (text.find_first_of("\t\n\r") != text.npos || holds(text, "\u00a0")) return blanks;
    if (!starts_with_a_number(text)) return how_it_starts;
    if (ends_in_a_point(pieces, text)) return last;
    const bool spelt = holds(text, "±") || holds(text, "+/-");
    return !spelt && holds(kinds_of(pieces), "P") ? sign : std::string_view{};
}

// What stands in front of the number belongs behind it where it is a unit, and is in the way
// otherwise.
void move_front(std::vector<Piece>& pieces, const Measure& measure) {
    if (pieces.size() < 2 || pieces[0].kind == Piece::number) return;
    const auto front = pieces.front();
    pieces.erase(pieces.begin());
    const bool lacks_unit = pieces.back().kind != Piece::words && !measure.unit.empty();
    if (lacks_unit && !meant_units(front.text, measure).empty()) pieces.push_back(front);
}

}  // namespace

std::vector<MeantQuantity> meant_quantities(std::string_view text, const Measure& measure) {
    std::vector<MeantQuantity> all;
    for (const auto& one : without_commas(text)) {
        auto pieces = pieces_of(one);
        const auto rule = broken_by_signs(text, pieces);
        move_front(pieces, measure);
        for (auto& meant : read_shape(pieces, measure)) {
            if (!rule.empty()) meant.rule = rule;
            all.push_back(std::move(meant));
        }
    }
    return all;
}

}  // namespace windwall::fields
