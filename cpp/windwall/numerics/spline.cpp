#include "windwall/numerics/spline.hpp"

#include <Eigen/LU>

#include <algorithm>
#include <stdexcept>

namespace windwall::numerics {
namespace {

constexpr int most = static_cast<int>(Spline::most_points);
using Column = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most, 1>;
using Square = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most, most>;

}  // namespace

Spline::Spline(std::span<const double> points, std::span<const double> values)
    : size_(points.size()) {
    if (size_ < 2 || size_ > most_points || values.size() != size_)
        throw std::invalid_argument("a spline takes 2 to 16 points and a value for each");
    if (std::adjacent_find(points.begin(), points.end(),
                           [](double a, double b) { return !(a < b); }) != points.end())
        throw std::invalid_argument("the points of a spline rise strictly");
    std::copy(points.begin(), points.end(), points_.begin());
    std::copy(values.begin(), values.end(), values_.begin());
    if (size_ > 2) bend();
}

/// Second slopes that make the first slope continuous at every inner point.
void Spline::bend() {
    const auto n = static_cast<Eigen::Index>(size_);
    const auto h = [this](Eigen::Index i) {
        const auto k = static_cast<std::size_t>(i);
        return points_[k + 1] - points_[k];
    };
    const auto slope = [&](Eigen::Index i) {
        const auto k = static_cast<std::size_t>(i);
        return (values_[k + 1] - values_[k]) / h(i);
    };
    Square system = Square::Zero(n, n);
    Column right = Column::Zero(n);
    for (Eigen::Index i = 1; i + 1 < n; ++i) {
        system(i, i - 1) = h(i - 1) / 6;
        system(i, i) = (h(i - 1) + h(i)) / 3;
        system(i, i + 1) = h(i) / 6;
        right(i) = slope(i) - slope(i - 1);
    }
    if (n == 3) {  // a parabola: one second slope everywhere
        system(0, 0) = system(2, 2) = 1;
        system(0, 1) = system(2, 1) = -1;
    } else {
        system(0, 0) = h(1);
        system(0, 1) = -(h(0) + h(1));
        system(0, 2) = h(0);
        system(n - 1, n - 3) = h(n - 2);
        system(n - 1, n - 2) = -(h(n - 2) + h(n - 3));
        system(n - 1, n - 1) = h(n - 3);
    }
    const Column found = Eigen::PartialPivLU<Square>(system).solve(right);
    std::copy(found.data(), found.data() + n, curvature_.begin());
}

double Spline::at(double point) const noexcept {
    std::size_t i = 0;
    while (i + 2 < size_ && point >= points_[i + 1])
        ++i;
    const double h = points_[i + 1] - points_[i];
    const double b = (point - points_[i]) / h, a = 1 - b;
    const double bent = (a * a - 1) * a * curvature_[i] + (b * b - 1) * b * curvature_[i + 1];
    return a * values_[i] + b * values_[i + 1] + bent * h * h / 6;
}

}  // namespace windwall::numerics
