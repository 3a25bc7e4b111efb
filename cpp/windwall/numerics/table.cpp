#include "windwall/numerics/table.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <string>

namespace windwall::numerics {
namespace {

void require(bool condition, const char* sentence) {
    if (!condition) throw std::invalid_argument(sentence);
}

bool all_finite(const std::vector<double>& numbers) {
    return std::all_of(numbers.begin(), numbers.end(), [](double x) { return std::isfinite(x); });
}

/// What is wrong with an axis; empty where nothing is, which is asked often.
std::string fault(const std::vector<double>& axis) {
    if (axis.size() < 2) return " needs at least two entries";
    if (!all_finite(axis)) return " holds an entry that is not a finite number";
    const auto level = std::ranges::adjacent_find(axis, std::greater_equal{});
    if (level == axis.end()) return {};
    return " must rise strictly: entry " + std::to_string(level - axis.begin() + 2) +
           " is not greater than the one before it";
}

void require_axis(const std::vector<double>& axis, const char* name) {
    const std::string found = fault(axis);
    if (!found.empty()) throw std::invalid_argument(name + found);
}

/// Where a point lies on an axis: the interval, and how far into it from 0 to 1.
struct Place {
    std::size_t interval;
    double part;
    bool in_range;
};

Place locate(const std::vector<double>& axis, double point) noexcept {
    const bool in_range = point >= axis.front() && point <= axis.back();
    const double inside = std::clamp(point, axis.front(), axis.back());
    const auto above = std::upper_bound(axis.begin() + 1, axis.end() - 1, inside);
    const auto interval = static_cast<std::size_t>(above - axis.begin()) - 1;
    const double width = axis[interval + 1] - axis[interval];
    return {interval, (inside - axis[interval]) / width, in_range};
}

/// One-sided three-point slope, limited so that the end interval stays monotone.
double end_slope(double h0, double h1, double d0, double d1) {
    const double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0) return 0;
    if (d0 * d1 < 0 && std::abs(slope) > 3 * std::abs(d0)) return 3 * d0;
    return slope;
}

/// Weighted harmonic mean of the two neighbours; zero at a turning point.
double inner_slope(double h0, double h1, double d0, double d1) {
    if (d0 * d1 <= 0) return 0;
    const double w0 = 2 * h1 + h0, w1 = h1 + 2 * h0;
    return (w0 + w1) / (w0 / d0 + w1 / d1);
}

std::vector<double> monotone_slopes(const std::vector<double>& x, const std::vector<double>& y) {
    const std::size_t n = x.size();
    const auto h = [&](std::size_t i) { return x[i + 1] - x[i]; };
    const auto d = [&](std::size_t i) { return (y[i + 1] - y[i]) / h(i); };
    if (n == 2) return {d(0), d(0)};
    std::vector<double> slopes(n);
    slopes.front() = end_slope(h(0), h(1), d(0), d(1));
    slopes.back() = end_slope(h(n - 2), h(n - 3), d(n - 2), d(n - 3));
    for (std::size_t i = 1; i + 1 < n; ++i)
        slopes[i] = inner_slope(h(i - 1), h(i), d(i - 1), d(i));
    return slopes;
}

}  // namespace

Table::Table(std::vector<double> points, std::vector<double> values, Interpolation interpolation)
    : points_(std::move(points)), values_(std::move(values)) {
    require_axis(points_, "the column of points");
    require(values_.size() == points_.size(), "a table needs one value for each point");
    require(all_finite(values_), "the column of values holds an entry that is not a finite number");
    if (interpolation == Interpolation::monotone) slopes_ = monotone_slopes(points_, values_);
}

Reading Table::at(double point) const noexcept {
    const auto [i, t, in_range] = locate(points_, point);
    const double y0 = values_[i], y1 = values_[i + 1];
    if (slopes_.empty()) return {y0 + t * (y1 - y0), in_range};
    const double h = points_[i + 1] - points_[i], s = 1 - t;
    const double value = s * s * ((1 + 2 * t) * y0 + t * h * slopes_[i]) +
                         t * t * ((1 + 2 * s) * y1 - s * h * slopes_[i + 1]);
    return {value, in_range};
}

Grid::Grid(std::vector<double> x, std::vector<double> y, std::vector<double> values)
    : x_(std::move(x)), y_(std::move(y)), values_(std::move(values)) {
    require_axis(x_, "the first axis of the grid");
    require_axis(y_, "the second axis of the grid");
    require(values_.size() == x_.size() * y_.size(),
            "a grid needs one value for each pair of axis entries");
    require(all_finite(values_), "the grid holds a value that is not a finite number");
}

Reading Grid::at(double x, double y) const noexcept {
    const Place row = locate(x_, x), column = locate(y_, y);
    const double* corner = values_.data() + row.interval * y_.size() + column.interval;
    const double* next = corner + y_.size();
    const double here = corner[0] + column.part * (corner[1] - corner[0]);
    const double there = next[0] + column.part * (next[1] - next[0]);
    return {here + row.part * (there - here), row.in_range && column.in_range};
}

}  // namespace windwall::numerics
