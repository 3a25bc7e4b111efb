#include "windwall/fields/pieces.hpp"

#include "windwall/fields/exact.hpp"
#include "windwall/fields/plain_text.hpp"

#include <algorithm>
#include <cctype>

namespace windwall::fields {
namespace {

// Longer spellings first.
constexpr Replacement spelt[] = {
    {"\t", " "},     {"\n", " "},     {"\r", " "},     {"\u00a0", " "},
    {"\u202f", " "}, {"\u2009", " "}, {"(", " "},      {")", " "},
    {"\u2212", "-"}, {"\u2013", "-"}, {"\u00ba", "°"}, {"plus or minus", "±"},
    {"+ / -", "±"},  {"+ /-", "±"},   {"+/ -", "±"},   {"+/-", "±"},
    {"-/+", "±"},    {"+ -", "±"},    {"+-", "±"},     {"-+", "±"},
};

bool is_digit(char letter) { return letter >= '0' && letter <= '9'; }

// A number at the start of a text; one of ".5" and "5." as well.
Piece number_at(std::string_view text) {
    if (text.size() > 1 && text[0] == '.' && is_digit(text[1])) {
        const auto behind = "0" + std::string(text);
        return {Piece::number, behind.substr(0, number_length(behind))};
    }
    auto size = number_length(text);
    const auto whole =
        std::min(text.find_first_not_of("0123456789", text.starts_with('-') ? 1 : 0), text.size());
    // A zero in front, or a point behind, with no digit to follow.
    if (size == 0 && whole > (text.starts_with('-') ? 1u : 0u)) size = whole;
    return {Piece::number, std::string(text.substr(0, size))};
}

std::size_t words_at(std::string_view text) {
    std::size_t at = 0;
    for (; at < text.size() && text[at] != ' ' && !text.substr(at).starts_with("±"); ++at)
        if (at > 0 && is_digit(text[at]) && std::isalpha(static_cast<unsigned char>(text[0])) == 0)
            break;
    return std::max<std::size_t>(at, 1);
}

void add_words(std::vector<Piece>& pieces, std::string_view words) {
    if (!pieces.empty() && pieces.back().kind == Piece::words)
        pieces.back().text += " " + std::string(words);
    else
        pieces.push_back({Piece::words, std::string(words)});
}

// Takes one piece off the front of a text; how long it was.
std::size_t take(std::vector<Piece>& pieces, std::string_view text) {
    const bool after_number = !pieces.empty() && pieces.back().kind == Piece::number;
    if (text.starts_with("±")) {
        pieces.push_back({Piece::plus_minus, "±"});
        return std::string_view("±").size();
    }
    const auto number = number_at(text);
    if (!number.text.empty()) {
        pieces.push_back(number);
        return number.text.size() - (text.starts_with('.') ? 1 : 0);
    }
    if (after_number && (text[0] == '/' || text[0] == ':')) {
        pieces.push_back({static_cast<Piece::Kind>(text[0]), std::string(text.substr(0, 1))});
        return 1;
    }
    const auto size = words_at(text);
    // The point of "5." belongs to its number.
    if (!(after_number && text.substr(0, size) == ".")) add_words(pieces, text.substr(0, size));
    return size;
}

}  // namespace

std::vector<Piece> pieces_of(std::string_view text) {
    std::vector<Piece> pieces;
    const auto plain = replaced(text, spelt);
    for (std::string_view rest = plain; !rest.empty();)
        rest.remove_prefix(rest[0] == ' ' ? 1 : take(pieces, rest));
    return pieces;
}

std::string kinds_of(const std::vector<Piece>& pieces) {
    std::string kinds;
    for (const auto& piece : pieces)
        kinds += static_cast<char>(piece.kind);
    return kinds;
}

std::vector<std::string> without_commas(std::string_view text) {
    constexpr std::size_t thousand = 3;  // digits
    const auto at = text.find(',');
    if (at == text.npos) return {std::string(text)};
    auto pointed = std::string(text), joined = pointed;
    std::ranges::replace(pointed, ',', '.');
    std::erase(joined, ',');
    const auto rest = text.substr(at + 1);
    const auto digits = std::min(rest.find_first_not_of("0123456789"), rest.size());
    if (digits == 0) return {joined.erase(at, rest.starts_with('-') ? 1 : 0)};
    if (digits == thousand) return {pointed, joined};
    return {pointed};
}

}  // namespace windwall::fields
