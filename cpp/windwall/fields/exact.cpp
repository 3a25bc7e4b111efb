#include "windwall/fields/exact.hpp"

#include <boost/multiprecision/cpp_int.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

namespace windwall::fields {
namespace {

using boost::multiprecision::cpp_int;
using boost::multiprecision::cpp_rational;

constexpr std::size_t longest_decimal = 400;
constexpr int largest_exponent = 400;  // beyond every double, and no work to speak of

struct Scale {
    cpp_rational factor;
    cpp_rational shift;
};

cpp_int power_of_ten(int exponent) {
    return boost::multiprecision::pow(cpp_int(10), static_cast<unsigned>(exponent));
}

cpp_rational scaled_by_ten(cpp_int digits, int exponent) {
    if (exponent >= 0) return cpp_rational(digits * power_of_ten(exponent));
    return cpp_rational(std::move(digits), power_of_ten(-exponent));
}

// The decimal text of a valid number as a fraction; empty where its exponent is beyond all sense.
std::optional<cpp_rational> fraction(std::string_view text) {
    const bool negative = text.starts_with('-');
    const auto e = std::min(text.find_first_of("eE"), text.size());
    int exponent = 0;
    if (e < text.size()) {
        auto written = text.substr(e + 1);
        if (written.starts_with('+')) written.remove_prefix(1);
        const auto end = written.data() + written.size();
        if (std::from_chars(written.data(), end, exponent).ec != std::errc{} ||
            std::abs(exponent) > largest_exponent)
            return std::nullopt;
    }
    std::string digits;
    bool behind_point = false;
    for (const char letter : text.substr(negative ? 1 : 0, e - (negative ? 1 : 0))) {
        if (letter == '.') {
            behind_point = true;
        } else {
            digits += letter;
            if (behind_point) --exponent;
        }
    }
    // A leading zero would make the text octal.
    digits.erase(0, std::min(digits.find_first_not_of('0'), digits.size() - 1));
    cpp_int whole(digits);
    return scaled_by_ten(negative ? cpp_int(-whole) : whole, exponent);
}

Scale scale(const Unit& unit) {
    return {*fraction(unit.factor) / *fraction(unit.divisor), *fraction(unit.shift)};
}

// The table's scales, worked out once.
const Scale& scale_of(const Unit& unit) {
    static const auto scales = [] {
        std::vector<Scale> made;
        for (const auto& each : all_units())
            made.push_back(scale(each));
        return made;
    }();
    return scales[static_cast<std::size_t>(&unit - all_units().data())];
}

cpp_rational in_si(const cpp_rational& number, const Unit& unit, Counted as) {
    const auto& [factor, shift] = scale_of(unit);
    if (as == Counted::difference) return number * factor;
    return (number + shift) * factor;
}

cpp_rational in_unit(double si, const Unit& unit, Counted as) {
    const auto& [factor, shift] = scale_of(unit);
    cpp_rational number = cpp_rational(si) / factor;
    if (as == Counted::level) number -= shift;
    return number;
}

double rounded(const cpp_rational& exact) { return exact.convert_to<double>(); }

// The nearest whole number, halves away from zero.
cpp_int nearest_whole(const cpp_rational& number) {
    const cpp_int twice = 2 * numerator(number), below = denominator(number);
    const cpp_int sign = twice < 0 ? -below : below;
    return (twice + sign) / (2 * below);
}

// Digits d1d2d3... with the decimal exponent of d1, as JSON writes a number.
std::string written(std::string digits, bool negative, int exponent) {
    digits.erase(digits.find_last_not_of('0') + 1);
    const int count = static_cast<int>(digits.size());
    if (exponent < -5 || exponent > 15) {
        if (count > 1) digits.insert(1, ".");
        digits += "e" + std::to_string(exponent);
    } else if (exponent < 0) {
        digits.insert(0, "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0'));
    } else if (count > exponent + 1) {
        digits.insert(static_cast<std::size_t>(exponent + 1), ".");
    } else {
        digits.append(static_cast<std::size_t>(exponent + 1 - count), '0');
    }
    return (negative ? "-" : "") + digits;
}

struct Decimal {
    std::string text;
    cpp_rational value;
};

// The number to this many significant digits.
Decimal to_digits(const cpp_rational& number, int count) {
    int exponent = static_cast<int>(std::floor(std::log10(std::abs(rounded(number)))));
    cpp_int whole = nearest_whole(number * scaled_by_ten(1, count - 1 - exponent));
    auto digits = cpp_int(abs(whole)).str();
    if (static_cast<int>(digits.size()) > count) ++exponent;
    const int last = exponent + 1 - static_cast<int>(digits.size());
    return {written(digits, whole < 0, exponent), scaled_by_ten(whole, last)};
}

std::size_t digits_from(std::string_view text, std::size_t at) {
    const auto end = text.find_first_not_of("0123456789", at);
    return std::min(end, text.size()) - at;
}

}  // namespace

std::size_t number_length(std::string_view text) {
    std::size_t at = text.starts_with('-') ? 1 : 0;
    const auto whole = digits_from(text, at);
    if (whole == 0 || (whole > 1 && text[at] == '0')) return 0;
    at += whole;
    if (at < text.size() && text[at] == '.') {
        const auto behind = digits_from(text, at + 1);
        if (behind == 0) return 0;
        at += 1 + behind;
    }
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        auto after = at + 1;
        if (after < text.size() && (text[after] == '+' || text[after] == '-')) ++after;
        const auto digits = digits_from(text, after);
        if (digits > 0) at = after + digits;
    }
    return at;
}

std::optional<double> to_si(std::string_view decimal, const Unit& unit, Counted as) {
    if (decimal.empty() || decimal.size() > longest_decimal) return std::nullopt;
    if (number_length(decimal) != decimal.size()) return std::nullopt;
    const auto number = fraction(decimal);
    if (!number) return std::nullopt;
    const double si = rounded(in_si(*number, unit, as));
    if (!std::isfinite(si)) return std::nullopt;
    return si;
}

double to_si(double number, const Unit& unit, Counted as) {
    return to_si(std::string_view(shortest(number)), unit, as).value();
}

double from_si(double si, const Unit& unit, Counted as) {
    if (!std::isfinite(si)) return si;
    return rounded(in_unit(si, unit, as));
}

std::string shortest(double si, const Unit& unit, Counted as) {
    // First, since 0 degC is a hair away from 273.15 as a double has it.
    if (rounded(in_si(0, unit, as)) == si) return "0";
    const auto number = in_unit(si, unit, as);
    for (int count = 1;; ++count) {
        const auto decimal = to_digits(number, count);
        if (count == 17 || rounded(in_si(decimal.value, unit, as)) == si) return decimal.text;
    }
}

std::string shortest(double number) {
    if (number == 0) return "0";
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(number),
                                   std::chars_format::scientific);
    const std::string_view text(buffer.data(), static_cast<std::size_t>(end.ptr - buffer.data()));
    const auto e = text.find('e');
    std::string digits(text.substr(0, 1));
    if (e > 2) digits += text.substr(2, e - 2);
    return written(digits, number < 0, std::stoi(std::string(text.substr(e + 1))));
}

}  // namespace windwall::fields
