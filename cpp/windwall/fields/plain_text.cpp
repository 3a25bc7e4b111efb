#include "windwall/fields/plain_text.hpp"

#include <algorithm>
#include <cstdint>

namespace windwall::fields {
namespace {

struct Character {
    std::uint32_t code;
    std::size_t bytes;
};

// Decodes one UTF-8 character; a broken byte becomes U+FFFD of one byte.
Character decode(std::string_view text) {
    const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
    const unsigned first = byte(0);
    const std::size_t bytes = first < 0x80   ? 1
                              : first < 0xC2 ? 0
                              : first < 0xE0 ? 2
                              : first < 0xF0 ? 3
                              : first < 0xF5 ? 4
                                             : 0;
    if (bytes == 1) return {first, 1};
    if (bytes == 0 || bytes > text.size()) return {0xFFFD, 1};
    std::uint32_t code = first & (0xFFu >> (bytes + 1));
    for (std::size_t at = 1; at < bytes; ++at) {
        if ((byte(at) & 0xC0u) != 0x80u) return {0xFFFD, 1};
        code = code << 6 | (byte(at) & 0x3Fu);
    }
    return {code, bytes};
}

bool steers_a_screen(std::uint32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0xAD || code == 0xFEFF ||
           (code >= 0x200B && code <= 0x200F) || (code >= 0x2028 && code <= 0x202E) ||
           (code >= 0x2060 && code <= 0x206F) || code == 0xFFFD;
}

}  // namespace

std::string printable(std::string_view text, std::size_t most) {
    std::string shown;
    for (std::size_t count = 0; !text.empty(); ++count) {
        if (count == most) return shown + "…";
        const auto [code, bytes] = decode(text);
        if (steers_a_screen(code)) {
            shown += "?";
        } else {
            shown += text.substr(0, bytes);
        }
        text.remove_prefix(bytes);
    }
    return shown;
}

bool fit_to_show(std::string_view text) {
    while (!text.empty()) {
        const auto [code, bytes] = decode(text);
        if (steers_a_screen(code) && code != '\n' && code != '\t') return false;
        text.remove_prefix(bytes);
    }
    return true;
}

std::size_t length_of(std::string_view text) {
    return static_cast<std::size_t>(std::ranges::count_if(
        text, [](char letter) { return (static_cast<unsigned char>(letter) & 0xC0u) != 0x80u; }));
}

std::string in_quotes(std::string_view text) { return "\"" + printable(text) + "\""; }

std::string replaced(std::string_view text, std::span<const Replacement> pairs) {
    std::string changed(text);
    for (const auto& [from, to] : pairs)
        for (std::size_t at = 0; (at = changed.find(from, at)) != std::string::npos;)
            changed.replace(at, from.size(), to);
    return changed;
}

}  // namespace windwall::fields
