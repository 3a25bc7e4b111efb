#include "windwall/fields/canonical.hpp"

#include "windwall/fields/plain_text.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace windwall::fields {
namespace {

// ECMAScript's Number::toString. [ECMA-262, section 6.1.6.1.20; RFC 8785, section 3.2.2.3]
std::string number(double value) {
    if (!std::isfinite(value)) throw std::domain_error("JSON has no text for this number");
    if (value == 0) return "0";
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value),
                                   std::chars_format::scientific);
    const std::string_view text(buffer.data(), end.ptr);
    const auto e = text.find('e');
    std::string digits(1, text[0]);
    if (e > 1) digits += text.substr(2, e - 2);
    const int point = std::stoi(std::string(text.substr(e + 1))) + 1;  // behind so many digits
    const int count = static_cast<int>(digits.size());
    const auto zeros = [](int many) { return std::string(static_cast<std::size_t>(many), '0'); };
    if (point > 21 || point < -5) {
        if (count > 1) digits.insert(1, ".");
        digits += (point > 0 ? "e+" : "e") + std::to_string(point - 1);
    } else if (point <= 0) {
        digits.insert(0, "0." + zeros(-point));
    } else if (count > point) {
        digits.insert(static_cast<std::size_t>(point), ".");
    } else {
        digits += zeros(point - count);
    }
    return (value < 0 ? "-" : "") + digits;
}

std::string object(const Json& value) {
    std::vector<std::pair<std::u16string, std::string>> entries;
    for (const auto& [key, child] : value.items())
        entries.emplace_back(utf16(key), Json(key).dump() + ":" + canonical(child));
    std::ranges::sort(entries);
    std::string text;
    for (const auto& [key, entry] : entries)
        text += (text.empty() ? "" : ",") + entry;
    return "{" + text + "}";
}

std::string list(const Json& value) {
    std::string text;
    for (const auto& child : value)
        text += (text.empty() ? "" : ",") + canonical(child);
    return "[" + text + "]";
}

}  // namespace

std::string canonical(const Json& value) {
    if (value.is_object()) return object(value);
    if (value.is_array()) return list(value);
    if (value.is_number()) return number(value.get<double>());
    return value.dump();
}

}  // namespace windwall::fields
