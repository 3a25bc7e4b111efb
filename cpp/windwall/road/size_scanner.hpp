#pragma once
#include <array>
#include <cctype>
#include <charconv>
#include <cstddef>
#include <optional>
#include <string_view>

namespace windwall::road {

/// A short text in upper case, in place, with the multiplication sign turned into X.
struct UpperCase {
    std::array<char, 48> letter{};
    std::size_t size = 0;
    bool fits = true;

    explicit UpperCase(std::string_view text) noexcept {
        constexpr std::string_view times = "\xc3\x97";
        while (!text.empty()) {
            if (size == letter.size()) {
                fits = false;
                return;
            }
            const bool cross = text.starts_with(times);
            const auto first = static_cast<unsigned char>(text.front());
            letter[size++] = cross ? 'X' : static_cast<char>(std::toupper(first));
            text.remove_prefix(cross ? times.size() : 1);
        }
    }
    std::string_view view() const noexcept { return {letter.data(), size}; }
};

/// Walks along the text of a tyre size.
class SizeScanner {
public:
    explicit SizeScanner(std::string_view text) noexcept : rest_(text) {}

    std::string_view rest() const noexcept { return rest_; }

    void skip_spaces() noexcept {
        while (rest_.starts_with(' '))
            rest_.remove_prefix(1);
    }

    bool take(char wanted) noexcept {
        skip_spaces();
        if (!rest_.starts_with(wanted)) return false;
        rest_.remove_prefix(1);
        return true;
    }

    bool take_cross() noexcept { return take('X') || take('*'); }

    /// In front of the width: passenger, light truck, temporary spare, all terrain.
    void skip_prefix() noexcept {
        skip_spaces();
        for (const std::string_view prefix : {"LT", "AT", "P", "T"}) {
            if (!rest_.starts_with(prefix)) continue;
            rest_.remove_prefix(prefix.size());
            return;
        }
    }

    std::optional<double> number() noexcept {
        skip_spaces();
        double value{};
        const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), value,
                                                  std::chars_format::fixed);
        if (error != std::errc() || !(value > 0)) return std::nullopt;
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        return value;
    }

    /// The letters up to the next number, with the dash on either side of them dropped.
    std::string_view letters() noexcept {
        dashed_ = take('-');
        skip_spaces();
        std::size_t count = 0;
        while (count < rest_.size() && rest_[count] >= 'A' && rest_[count] <= 'Z')
            ++count;
        const std::string_view found = rest_.substr(0, count);
        rest_.remove_prefix(count);
        dashed_ |= take('-');
        return found;
    }

    /// Whether the last letters() met a dash.
    bool dashed() const noexcept { return dashed_; }

    /// The next word behind the size, without the brackets around it.
    std::string_view word() noexcept {
        constexpr std::string_view between = " ()";
        const std::size_t begin = rest_.find_first_not_of(between);
        if (begin == std::string_view::npos) return {};
        const std::string_view from = rest_.substr(begin);
        const std::string_view found = from.substr(0, from.find_first_of(between));
        rest_ = from.substr(found.size());
        return found;
    }

private:
    std::string_view rest_;
    bool dashed_ = false;
};

}  // namespace windwall::road
