#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/write.hpp"

#include <nlohmann/json.hpp>

namespace windwall::fields {
namespace {

constexpr std::size_t widest = 100;  // characters

std::string start_of(const Json& parent, const std::string& key) {
    return parent.is_object() ? Json(key).dump() + ": " : std::string();
}

char opening(const Json& value) { return value.is_object() ? '{' : '['; }
char closing(const Json& value) { return value.is_object() ? '}' : ']'; }

std::string line_of(const Json& value) {
    if (!value.is_structured()) return value.dump();
    std::string line(1, opening(value));
    for (const auto& [key, child] : value.items())
        line += (line.size() > 1 ? ", " : "") + start_of(value, key) + line_of(child);
    return line + closing(value);
}

std::string lines_of(const Json& value, std::size_t indent, std::size_t room) {
    if (!value.is_structured() || value.empty()) return value.dump();
    if (indent > 0) {
        auto line = line_of(value);
        if (length_of(line) <= room) return line;
    }
    const auto margin = "\n" + std::string(indent + 2, ' ');
    std::string lines(1, opening(value));
    for (const auto& [key, child] : value.items()) {
        const auto start = start_of(value, key);
        const auto taken = indent + 2 + length_of(start) + 1;  // and a comma
        if (lines.size() > 1) lines += ',';
        lines += margin + start + lines_of(child, indent + 2, taken < widest ? widest - taken : 0);
    }
    return lines + "\n" + std::string(indent, ' ') + closing(value);
}

}  // namespace

std::string pretty(const Json& value) { return lines_of(value, 0, 0) + "\n"; }

}  // namespace windwall::fields
