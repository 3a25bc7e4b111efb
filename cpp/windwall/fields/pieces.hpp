#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// A quantity that is not typed as the grammar has it, in pieces.
struct Piece {
    enum Kind : char { number = 'N', plus_minus = 'P', stroke = '/', colon = ':', words = 'W' };
    Kind kind;
    std::string text;
};

/// The pieces of a text of a quantity, neighbouring words as one; a ± however it is typed, and
/// every sign that does not show as a blank.
std::vector<Piece> pieces_of(std::string_view text);

/// Their kinds in order: "NWPN" of "348 kg +- 5".
std::string kinds_of(const std::vector<Piece>& pieces);

/// The same with decimals behind a point, and, where three digits follow a comma, as thousands.
std::vector<std::string> without_commas(std::string_view text);

}  // namespace windwall::fields
