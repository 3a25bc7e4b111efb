#pragma once
#include <optional>
#include <string_view>

namespace windwall::road {

/// What the size on a sidewall says.
struct TyreSize {
    double section_width{};  // m
    double aspect{};         // height of the section over its width
    double rim{};            // m
    double diameter{};       // m, overall, as new and unloaded
    std::optional<int> load_index;
    std::optional<double> speed_limit;  // m/s
    std::string_view problem;           // why the text was not understood; empty when it was
};

/// Reads a size with its service description, upper or lower case:
///   metric        155/80 R13 79T, P195/60R14, 120/70 ZR17 M/C (58W), 80/90-14 40P, 145 R12
///   inch          3.50-10 51J, 4.25/85-18, 3.00 x 19
///   by diameter   11x7.10-5, 25x8-12, 26x3
/// Without an aspect ratio a metric section is 80 % high, an inch section as high as wide, and the
/// motorcycle widths 3.60, 4.10, 4.60 and 5.10 are 90 % high. Allocates nothing.
TyreSize read_tyre_size(std::string_view text) noexcept;

/// Overall diameter, m, of a section width in m, an aspect ratio and a rim in m: d + 2 w h.
double tyre_diameter(double section_width, double aspect, double rim) noexcept;

}  // namespace windwall::road
