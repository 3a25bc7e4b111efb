#include "windwall/road/tyre_size.hpp"

#include "windwall/road/size_scanner.hpp"
#include "windwall/road/tyre_tables.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::road {

namespace {

constexpr double inch = 25.4e-3;
constexpr double millimetre = 1e-3;

TyreSize refused(std::string_view why) noexcept {
    TyreSize size;
    size.problem = why;
    return size;
}

bool within(double x, double low, double high) noexcept { return x >= low && x <= high; }

// Below 40 a width or a rim is in inches, above it in millimetres.
double metres(double number) noexcept { return number * (number < 40 ? inch : millimetre); }

double usual_aspect(double width) noexcept {
    constexpr std::array low_inch{3.60, 4.10, 4.60, 5.10};
    if (width >= 40) return 0.80;
    return std::find(low_inch.begin(), low_inch.end(), width) == low_inch.end() ? 1.0 : 0.9;
}

/// The letters between section and rim: R, B, D or -, after an old speed symbol or Z.
bool read_letters(std::string_view letters, TyreSize& size) noexcept {
    std::string_view speed = letters;
    if (!speed.empty() && (speed.back() == 'R' || speed.back() == 'B' || speed.back() == 'D'))
        speed.remove_suffix(1);
    if (speed.empty()) return true;
    // These two stand for "above", and a tyre that says no more is held to the least they mean.
    if (speed == "Z")
        size.speed_limit = 240 / 3.6;
    else if (speed == "V")
        size.speed_limit = 210 / 3.6;
    else
        size.speed_limit = speed_symbol_limit(speed);
    return size.speed_limit.has_value();
}

/// 58W, 75/73S or A8 behind a number: the first load index counts, that of a single tyre.
bool read_service(SizeScanner word, TyreSize& size) noexcept {
    const auto index = word.number();
    if (word.take('/') && !word.number()) return false;
    const auto limit = speed_symbol_limit(word.rest());
    if (!index || *index > 999 || *index != std::floor(*index) || !limit) return false;
    const int whole = static_cast<int>(*index);
    if (!load_index_mass(whole)) return false;
    size.load_index = whole;
    size.speed_limit = limit;
    return true;
}

bool read_marks(SizeScanner& scan, TyreSize& size) noexcept {
    constexpr std::string_view marks[] = {"M/C", "MC",    "TL",  "TT",  "XL", "RF",
                                          "C",   "REINF", "M+S", "M&S", "NHS"};
    for (auto word = scan.word(); !word.empty(); word = scan.word()) {
        if (std::find(std::begin(marks), std::end(marks), word) != std::end(marks)) continue;
        if (word.ends_with("PR")) continue;
        if (!read_service(SizeScanner(word), size)) return false;
    }
    return true;
}

/// 11x7.10-5, 25x8x12, 26x3 or 3.00x19, behind the first number and its cross.
TyreSize read_crossed(double first, SizeScanner& scan) noexcept {
    const auto second = scan.number();
    if (!second) return refused("a number is missing behind the x");
    TyreSize size;
    const bool third_follows = scan.take_cross() || !scan.letters().empty() || scan.dashed();
    const auto third = third_follows ? scan.number() : std::nullopt;
    if (!third && first < *second) {
        size.section_width = first * inch;
        size.aspect = usual_aspect(first);
        size.rim = *second * inch;
        size.diameter = tyre_diameter(size.section_width, size.aspect, size.rim);
        return size;
    }
    size.diameter = first * inch;
    size.section_width = *second * inch;
    size.rim = third ? *third * inch : size.diameter - 2 * size.section_width;
    size.aspect = (size.diameter - size.rim) / (2 * size.section_width);
    return size;
}

// What reads two ways is told with both, and not guessed.
constexpr double widest_alone = 200;  // mm, below which older codes state a width alone: 185-15
constexpr double least_aspect = 40;   // per cent, behind a width in inches
constexpr std::string_view point_left_out =
    "it is a size in inches without its point, as 3.50-10, or a width in mm without its aspect "
    "ratio, as 200/80-10: write the one that is meant";
constexpr std::string_view inches_or_per_cent =
    "the number behind a width in inches is the diameter of the tyre in inches or its aspect ratio "
    "in per cent: write 20.5x7.0-13 for the one, 180/50-13 in mm for the other";

TyreSize read_section(double width, SizeScanner& scan) noexcept {
    TyreSize size;
    const bool alone = !scan.take('/');
    const auto aspect = alone ? std::optional(100 * usual_aspect(width)) : scan.number();
    if (!aspect) return refused("the aspect ratio behind the / is missing");
    if (width < 40 && *aspect < least_aspect) return refused(inches_or_per_cent);
    const std::string_view letters = scan.letters();
    if (alone && width >= widest_alone && letters.find('R') == letters.npos)
        return refused(point_left_out);
    if (!read_letters(letters, size))
        return refused("the letters in front of the rim are not known");
    const auto rim = scan.number();
    if (!rim) return refused("the rim is missing");
    size.section_width = metres(width);
    size.aspect = *aspect / 100;
    size.rim = metres(*rim);
    size.diameter = tyre_diameter(size.section_width, size.aspect, size.rim);
    return size;
}

bool plausible(const TyreSize& size) noexcept {
    return within(size.section_width, 0.025, 0.36) && within(size.aspect, 0.2, 1.3) &&
           within(size.rim, 0.07, 0.8) && size.diameter > size.rim;
}

}  // namespace

double tyre_diameter(double section_width, double aspect, double rim) noexcept {
    return rim + 2 * section_width * aspect;
}

TyreSize read_tyre_size(std::string_view text) noexcept {
    const UpperCase upper(text);
    if (!upper.fits) return refused("it is longer than any size");
    SizeScanner scan(upper.view());
    scan.skip_prefix();
    const auto first = scan.number();
    if (!first) return refused("it does not begin with a width or a diameter");
    TyreSize size = scan.take_cross() ? read_crossed(*first, scan) : read_section(*first, scan);
    if (!size.problem.empty()) return size;
    if (!read_marks(scan, size)) return refused("what stands behind the rim is not known");
    if (!plausible(size)) return refused("no tyre has such dimensions");
    return size;
}

}  // namespace windwall::road
