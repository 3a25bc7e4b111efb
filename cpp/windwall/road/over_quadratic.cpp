#include "windwall/road/over_quadratic.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::road {

double over_quadratic(double a, double b, double c, double low, double high) noexcept {
    // The difference of the two arc functions is written as one, so nothing cancels.
    const double span = high - low;
    const double sum = 2 * a + b * (low + high) + 2 * c * low * high;
    const double discriminant = 4 * a * c - b * b;
    const double root = std::sqrt(std::abs(discriminant));
    if (root * span < 1e-4 * sum) {
        const double squared = discriminant * span * span / (sum * sum);
        return 2 * span / sum * (1 - squared / 3 + squared * squared / 5);
    }
    if (discriminant > 0) return 2 / root * std::atan2(root * span, sum);
    return 2 / root * std::atanh(std::min(1.0, root * span / sum));
}

}  // namespace windwall::road
