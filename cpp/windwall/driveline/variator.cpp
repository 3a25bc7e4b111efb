#include "windwall/driveline/variator.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {

double Variator::ratio(double position) const noexcept {
    // The ends themselves, to the last digit.
    if (!(position > 0)) return low_ratio;
    if (position >= 1) return high_ratio;
    return low_ratio * std::pow(high_ratio / low_ratio, position);
}

double Variator::position(double ratio) const noexcept {
    const double span = std::log(high_ratio / low_ratio);
    if (span == 0) return 1;
    return std::clamp(std::log(ratio / low_ratio) / span, 0.0, 1.0);
}

}  // namespace windwall::driveline
