#pragma once
#include <array>
#include <cstddef>
#include <span>

namespace windwall::numerics {

/// The cubic spline through a few points with continuous second slope, whose first and last two
/// pieces are one cubic each ("not a knot"): it needs no slope at its ends, and a parabola or a
/// line where there are only three points or two. Smooth data only, since it may overshoot a kink.
/// It lives on the stack. Outside its points the end pieces go on.
class Spline {
public:
    static constexpr std::size_t most_points = 16;

    Spline() = default;
    /// Points rise strictly, two to `most_points` of them; else it throws std::invalid_argument.
    Spline(std::span<const double> points, std::span<const double> values);

    double at(double point) const noexcept;

private:
    void bend();

    std::size_t size_ = 0;
    std::array<double, most_points> points_{};
    std::array<double, most_points> values_{};
    std::array<double, most_points> curvature_{};  // second slope at each point
};

}  // namespace windwall::numerics
