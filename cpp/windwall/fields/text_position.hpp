#pragma once
#include "windwall/fields/problems.hpp"

#include <cstddef>
#include <string_view>

namespace windwall::fields {

/// Walks forward through a text and knows line and column.
class TextPosition {
public:
    explicit TextPosition(std::string_view text) : text_(text) {
        if (text.starts_with("\xEF\xBB\xBF")) at_ = 3;
    }

    void advance_to(std::size_t offset) {
        for (; at_ < offset && at_ < text_.size(); ++at_)
            step(text_[at_]);
    }

    /// Past what stands between two tokens of JSON.
    void skip_separators() {
        while (at_ < text_.size() && std::string_view(" \t\r\n,:").find(text_[at_]) != npos)
            step(text_[at_++]);
    }

    Place place() const noexcept { return place_; }

private:
    static constexpr auto npos = std::string_view::npos;

    void step(char letter) {
        if (letter == '\n') {
            ++place_.line;
            place_.column = 1;
        } else if ((static_cast<unsigned char>(letter) & 0xC0u) != 0x80u) {
            ++place_.column;  // the later bytes of a UTF-8 character take no column
        }
    }

    std::string_view text_;
    std::size_t at_ = 0;
    Place place_{1, 1};
};

}  // namespace windwall::fields
