#include "windwall/fields/readable.hpp"

#include "windwall/fields/exact.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace windwall::fields {

std::string readable_number(double number, int significant_digits) {
    if (!std::isfinite(number)) return "unknown";
    if (number == 0) return "0";
    std::array<char, 64> buffer{};
    const auto written = [&](std::chars_format style, int decimals) {
        const auto end =
            std::to_chars(buffer.data(), buffer.data() + buffer.size(), number, style, decimals);
        return std::string(buffer.data(), end.ptr);
    };
    // The exponent after rounding, so that 9.996 to three digits is 10.0.
    const auto scientific = written(std::chars_format::scientific, significant_digits - 1);
    const int exponent = std::stoi(scientific.substr(scientific.find('e') + 1));
    if (exponent < -4 || exponent > 12) return scientific;
    return written(std::chars_format::fixed, std::max(0, significant_digits - 1 - exponent));
}

double near(double number, int significant_digits) {
    std::array<char, 64> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%.*g", significant_digits, number);
    return std::strtod(buffer.data(), nullptr);
}

std::string readable(double si, const Measure& measure, System system, int significant_digits) {
    const auto& unit = unit_in(measure, system);
    auto text = readable_number(from_si(si, unit), significant_digits);
    if (std::isfinite(si) && !unit.text.empty()) text += " " + std::string(unit.text);
    return text;
}

}  // namespace windwall::fields
