#include "windwall/numerics/spline.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace {

using windwall::numerics::Spline;

constexpr std::array points{0.3, 0.5, 1.1, 1.6, 2.9, 3.0};

template <class Function>
std::array<double, points.size()> values_of(Function function) {
    std::array<double, points.size()> values{};
    for (std::size_t i = 0; i < points.size(); ++i)
        values[i] = function(points[i]);
    return values;
}

// With no knot at the last point but one, a cubic is its own spline.
TEST(Spline, CubicIsExact) {
    const auto cubic = [](double x) { return 2 - x + 3 * x * x - 0.7 * x * x * x; };
    const Spline spline(points, values_of(cubic));
    for (double x = 0; x < 3.5; x += 0.01)
        EXPECT_NEAR(spline.at(x), cubic(x), 1e-12);
}

TEST(Spline, PassesThroughItsPointsSmoothly) {
    const Spline spline(points, values_of([](double x) { return std::exp(-x) * std::sin(5 * x); }));
    for (double x : points) {
        EXPECT_NEAR(spline.at(x), std::exp(-x) * std::sin(5 * x), 1e-14);
        const double h = 1e-5;
        const double before = spline.at(x) - spline.at(x - h);
        const double after = spline.at(x + h) - spline.at(x);
        EXPECT_NEAR(after / h, before / h, 1e-2);
    }
}

// A fourth power of the spacing: half of it, a sixteenth of the error.
TEST(Spline, ErrorFallsWithTheFourthPower) {
    const auto worst = [](std::size_t count) {
        std::array<double, 16> x{}, y{};
        for (std::size_t i = 0; i < count; ++i) {
            x[i] = static_cast<double>(i) / static_cast<double>(count - 1);
            y[i] = std::exp(x[i]);
        }
        const Spline spline({x.data(), count}, {y.data(), count});
        double most = 0;
        for (double at = 0; at <= 1; at += 0.001)
            most = std::max(most, std::abs(spline.at(at) - std::exp(at)));
        return most;
    };
    EXPECT_LT(worst(15), worst(8) / 10);
}

TEST(Spline, FewPointsAreALineOrAParabola) {
    const auto parabola = [](double x) { return 1 + x - 2 * x * x; };
    const std::array x{0.1, 0.5, 2.0};
    const Spline three(x, std::array{parabola(0.1), parabola(0.5), parabola(2.0)});
    EXPECT_NEAR(three.at(1.3), parabola(1.3), 1e-13);
    const Spline two(std::array{1.0, 3.0}, std::array{5.0, 9.0});
    EXPECT_NEAR(two.at(2), 7, 1e-14);
}

TEST(Spline, RefusesWhatIsNoCurve) {
    EXPECT_THROW(Spline(std::array{1.0}, std::array{1.0}), std::invalid_argument);
    EXPECT_THROW(Spline(std::array{1.0, 1.0}, std::array{1.0, 2.0}), std::invalid_argument);
    EXPECT_THROW(Spline(std::array{1.0, 2.0}, std::array{1.0}), std::invalid_argument);
}

}  // namespace
