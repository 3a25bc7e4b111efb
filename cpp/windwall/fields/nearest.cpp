#include "windwall/fields/nearest.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <numeric>

namespace windwall::fields {
namespace {

constexpr std::size_t longest = 64;
constexpr std::size_t most_edits = 8;

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter + 32) : letter;
}

bool same_but_for_capitals(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, {}, lower, lower);
}

// No fewer edits than this can turn `a` into `b`: letters that one has and the other lacks.
std::size_t least_edits(std::string_view a, std::string_view b) {
    std::array<int, 256> surplus{};
    for (const char letter : a)
        ++surplus[static_cast<unsigned char>(lower(letter))];
    for (const char letter : b)
        --surplus[static_cast<unsigned char>(lower(letter))];
    int more = 0, fewer = 0;
    for (const int count : surplus)
        (count > 0 ? more : fewer) += std::abs(count);
    return static_cast<std::size_t>(std::max(more, fewer));
}

// Edits (one letter wrong, missing, added, or two neighbours swapped) that turn `a` into `b`.
std::size_t edits(std::string_view a, std::string_view b) {
    std::array<std::array<std::size_t, longest + 1>, 3> row{};
    std::iota(row[1].begin(), row[1].end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        auto& now = row[2];
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t wrong = lower(a[i - 1]) == lower(b[j - 1]) ? 0 : 1;
            now[j] = std::min({row[1][j] + 1, now[j - 1] + 1, row[1][j - 1] + wrong});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) now[j] = std::min(now[j], row[0][j - 2] + 1);
        }
        row[0] = row[1];
        row[1] = row[2];
    }
    return row[1][b.size()];
}

}  // namespace

std::string_view nearest(std::string_view typed, std::span<const std::string_view> words) {
    std::string_view best;
    if (typed.empty() || typed.size() > longest) return best;
    std::size_t fewest = std::clamp<std::size_t>(typed.size() / 3, 1, most_edits) + 1;
    for (const auto word : words) {
        if (word.empty() || word.size() > longest) continue;
        if (same_but_for_capitals(typed, word)) return word;
        if (least_edits(typed, word) >= fewest) continue;
        // One wrong letter out of one is another word.
        const std::size_t wrong = edits(typed, word);
        if (wrong < fewest && wrong < std::max(typed.size(), word.size())) {
            fewest = wrong;
            best = word;
        }
    }
    return best;
}

}  // namespace windwall::fields
