#include "windwall/fields/reference.hpp"
#include "windwall/fields/units.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

constexpr std::string_view introduction = R"(# Units

A quantity is a number, a blank and a unit: `"36 mm"`. How well it is known may stand between them
as one standard deviation, `"36 ± 0.2 mm"` (or `+/-`), or behind them as a percentage of the value,
`"38 kPa ± 5 %"`; for a percentage, `"35 ± 5 %"` means points. A plain number stands alone: `1.35`.
A text has at most 64 characters, and no expressions are read.

These units are read and no others. The value inside is
(number + shift) × factor / divisor, worked out exactly from the decimal text and rounded once.
`²`, `³`, `^2`, `^3`, `·`, `*` and `°` are read as `2`, `3`, a blank and `deg`.
)";

std::string code(std::string_view text) { return "`" + std::string(text) + "`"; }

std::string aliases_of(const Unit& unit) {
    std::string list;
    for (const auto alias : entries(unit.aliases))
        list += (list.empty() ? "" : ", ") + code(alias);
    return list;
}

std::string line_of(const Unit& unit) {
    const auto other = unit.other.empty() ? "" : code(unit.other);
    const auto text = unit.text.empty() ? "(none)" : code(unit.text);
    return "| " + text + " | " + aliases_of(unit) + " | " + std::string(unit.shift) + " | " +
           std::string(unit.factor) + " | " + std::string(unit.divisor) + " | " + other + " | " +
           code(unit.udunits) + " |\n";
}

std::string heading_of(Dimension dimension) {
    std::string heading = "\n## " + std::string(name_of(dimension)) + "\n\n";
    if (dimension == Dimension::money) heading += "A currency is never turned into another.\n\n";
    if (dimension == Dimension::labour) heading += "Counted in hours; a bare number is hours.\n\n";
    heading += "| unit | also read | shift | factor | divisor | other system | UDUNITS |\n";
    return heading + "| --- | --- | --- | --- | --- | --- | --- |\n";
}

std::string ambiguous_section() {
    std::string text =
        "\n## refused, because they mean different things to different people\n\n"
        "| typed | write |\n| --- | --- |\n";
    for (const auto& spelling : ambiguous_units())
        text += "| " + code(spelling.text) + " | " + std::string(spelling.choices) + " |\n";
    return text +
           "\nPlain `psi`, `bar`, `inHg`, `mmHg`, `inH2O` and `mmH2O` do not say where they count "
           "from, and are\nrefused where a pressure above vacuum is expected; a unit that counts "
           "from elsewhere than the\nfield does is refused too, never converted.\n";
}

}  // namespace

std::string units_page() {
    std::string page(introduction);
    const Unit* before = nullptr;
    for (const auto& unit : all_units()) {
        if (!before || before->dimension != unit.dimension) page += heading_of(unit.dimension);
        page += line_of(unit);
        before = &unit;
    }
    return page + ambiguous_section();
}

}  // namespace windwall::fields
