#pragma once
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace windwall::fields {

/// A text from a file as it may stand in a message: no control or direction-changing characters,
/// no broken UTF-8, and cut with an ellipsis after `most` characters.
std::string printable(std::string_view text, std::size_t most = 64);

/// Whether a text may be shown as it is; line breaks and tabs may be in it.
bool fit_to_show(std::string_view text);

/// `printable` between double quotes.
std::string in_quotes(std::string_view text);

/// How many characters a text has, which in UTF-8 are fewer than its bytes.
std::size_t length_of(std::string_view text);

/// Every text on the left of a pair by the one on its right, pair after pair.
using Replacement = std::pair<std::string_view, std::string_view>;
std::string replaced(std::string_view text, std::span<const Replacement> pairs);

/// "a, b or c".
template <class Words>
std::string choices(const Words& words, std::string_view last = " or ") {
    std::string list;
    std::size_t at = 0;
    for (const auto& word : words) {
        if (at > 0) list += at + 1 == std::size(words) ? last : std::string_view(", ");
        list += word;
        ++at;
    }
    return list;
}

}  // namespace windwall::fields
