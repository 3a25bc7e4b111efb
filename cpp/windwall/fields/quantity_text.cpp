#include "windwall/fields/quantity_text.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"

#include <algorithm>

namespace windwall::fields {
namespace {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(' ') + 1 - first);
}

std::string_view take_number(std::string_view& text) {
    const auto number = text.substr(0, number_length(text));
    text = trimmed(text.substr(number.size()));
    return number;
}

struct PlusMinus {
    std::size_t at;
    std::size_t size;
};

PlusMinus find_plus_minus(std::string_view text) {
    for (const std::string_view sign : {"±", "+/-"})
        if (const auto at = text.find(sign); at != text.npos) return {at, sign.size()};
    return {text.size(), 0};
}

std::string no_number(std::string_view text) {
    if (text.starts_with('+') || text.starts_with('.'))
        return "a number starts with a digit or a minus sign, as in 0.5";
    return "it does not start with a number";
}

/// The same with a point, so that what somebody typed is theirs to copy.
std::string with_point(std::string_view text) {
    std::string pointed(text);
    std::ranges::replace(pointed, ',', '.');
    return pointed;
}

std::string odd_rest(std::string_view rest, std::string_view text) {
    if (rest.starts_with(','))
        return "decimals are set off by a point, not a comma, as in \"" + with_point(text) + "\"";
    if (rest.starts_with('.')) return "a digit must follow the decimal point";
    return {};
}

}  // namespace

Expected<QuantityText> take_apart(std::string_view text) {
    using Refusal = Expected<QuantityText>;
    if (length_of(text) > longest_quantity)
        return Refusal::refused("it is longer than " + std::to_string(longest_quantity) +
                                " characters");
    QuantityText made;
    auto rest = trimmed(text);
    if (number_length(rest) == 0) return Refusal::refused(no_number(rest));
    made.number = take_number(rest);
    if (auto odd = odd_rest(rest, trimmed(text)); !odd.empty()) return Refusal::refused(odd);
    const auto [at, size] = find_plus_minus(rest);
    if (size == 0) {
        made.unit = rest;
        return made;
    }
    auto behind = trimmed(rest.substr(at + size));
    made.sigma = take_number(behind);
    if (made.sigma.empty() || made.sigma.starts_with('-'))
        return Refusal::refused("a number that is not negative must follow the ±");
    if (auto odd = odd_rest(behind, trimmed(text)); !odd.empty()) return Refusal::refused(odd);
    if (at == 0) {
        made.unit = behind;
        return made;
    }
    made.unit = trimmed(rest.substr(0, at));
    made.sigma_is_share = behind == "%";
    if (made.sigma_is_share) return made;
    return Refusal::refused(
        "one unit serves the value and its ±, and stands at the end, as in "
        "\"38 ± 4 kPa\"; only a percentage of the value follows the unit");
}

}  // namespace windwall::fields
