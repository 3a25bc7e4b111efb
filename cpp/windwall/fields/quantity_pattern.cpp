#include "windwall/fields/quantity_pattern.hpp"

#include "windwall/fields/units.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

// The longest run of digits, so that "51/m" is no "5 1/m".
const std::string positive = R"((?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?(?![0-9]))";
const std::string number_text = "-?" + positive;
const std::string plus_minus = R"((?:±|\+/-) *)" + positive;

// A spelling with all the ways its signs are typed.
std::string spelling(std::string_view text) {
    std::string pattern;
    if (text.starts_with("deg")) {
        pattern = "(?:deg|°)";
        text.remove_prefix(3);
    }
    for (const char letter : text) {
        switch (letter) {
            case '2': pattern += R"((?:\^?2|²))"; break;
            case '3': pattern += R"((?:\^?3|³))"; break;
            case ' ': pattern += R"((?: |·|\*))"; break;
            default: pattern += letter;
        }
    }
    return pattern;
}

std::string spellings(Dimension dimension) {
    std::string pattern;
    for (const auto& unit : units_of(dimension)) {
        const auto all =
            std::string(unit.text) + (unit.aliases.empty() ? "" : "|" + std::string(unit.aliases));
        for (std::size_t start = 0, end = 0; start <= all.size(); start = end + 1) {
            end = std::min(all.find('|', start), all.size());
            pattern += (pattern.empty() ? "" : "|") + spelling(all.substr(start, end - start));
        }
    }
    return "(?:" + pattern + ")";
}

}  // namespace

std::string unit_pattern(Dimension dimension) {
    if (dimension == Dimension::number) return "^%?$";
    return "^" + spellings(dimension) + "$";
}

std::string whole_number_pattern() {
    return R"(^ *-?(?:0|[1-9][0-9]*)(?:\.0+)? *(?:)" + plus_minus + " *)?$";
}

std::string quantity_pattern(const Measure& measure) {
    const auto start = "^ *" + number_text + " *";
    const auto sigma = "(?:" + plus_minus + " *)?";
    if (measure.unit == "%") return start + sigma + "% *$";
    if (measure.dimension == Dimension::number) return start + "(?:" + sigma + "|%) *$";
    const auto unit = spellings(measure.dimension);
    auto pattern = sigma + unit + (measure.dimension == Dimension::labour ? "?" : "");
    // A share of a temperature would depend on its zero point.
    if (measure.dimension != Dimension::temperature)
        pattern += "|" + unit + " *" + plus_minus + " *%";
    return start + "(?:" + pattern + ") *$";
}

}  // namespace windwall::fields
