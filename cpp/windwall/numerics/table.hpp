#pragma once
#include <span>
#include <vector>

/// Numbers measured at a few points, read in between. Outside, the nearest edge is read and
/// flagged: nothing is extrapolated.
namespace windwall::numerics {

struct Reading {
    double value{};
    bool in_range{};
};

/// `monotone`: piecewise cubic Hermite with the slopes of Fritsch and Butland (1984), the method
/// called pchip; it never overshoots the data.
enum class Interpolation { linear, monotone };

class Table {
public:
    /// Throws std::invalid_argument unless the points rise strictly, are at least two, finite, and
    /// as many as the values.
    Table(std::vector<double> points, std::vector<double> values,
          Interpolation interpolation = Interpolation::linear);

    Reading at(double point) const noexcept;
    double low() const noexcept { return points_.front(); }
    double high() const noexcept { return points_.back(); }

private:
    std::vector<double> points_;
    std::vector<double> values_;
    std::vector<double> slopes_;  // empty for linear
};

/// Bilinear in a rectangle. `values` holds the row of the first x, then of the second, ...
class Grid {
public:
    Grid(std::vector<double> x, std::vector<double> y, std::vector<double> values);

    Reading at(double x, double y) const noexcept;

private:
    std::vector<double> x_;
    std::vector<double> y_;
    std::vector<double> values_;
};

}  // namespace windwall::numerics
