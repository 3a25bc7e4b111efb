#include "windwall/driveline/variator.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {
namespace {

constexpr double nudge = 1e-4;  // of the position, for a slope

/// Where something that rises along the position is 0; 0 and 1 where it is so nowhere between.
template <class Rising>
double position_where(Rising&& rising) noexcept {
    const double at_low = rising(0.0), at_high = rising(1.0);
    if (at_low >= 0) return 0;
    if (at_high <= 0) return 1;
    return numerics::find_root(rising, {0, 1, at_low, at_high}).x;
}

}  // namespace

double ratio_between(double low_ratio, double high_ratio, double position) noexcept {
    // The ends themselves, to the last digit.
    if (!(position > 0)) return low_ratio;
    if (position >= 1) return high_ratio;
    return low_ratio * std::pow(high_ratio / low_ratio, position);
}

double Variator::ratio(double position) const noexcept {
    return ratio_between(low_ratio, high_ratio, position);
}

double Variator::unbounded_position(double ratio) const noexcept {
    const double span = std::log(high_ratio / low_ratio);
    return span == 0 ? 1 : std::log(ratio / low_ratio) / span;
}

double Variator::position_of(double ratio) const noexcept {
    return std::clamp(unbounded_position(ratio), 0.0, 1.0);
}

double Variator::held_speed(double position, double torque) const noexcept {
    if (forces) return before * forces->shift_speed(ratio(position), before * torque);
    return before * std::lerp(line.begin, line.end, std::clamp(position, 0.0, 1.0));
}

double Variator::position(double engine_speed, double torque) const noexcept {
    return position_where([&](double at) { return held_speed(at, torque) - engine_speed; });
}

double Variator::position_at_output(double output_speed, double torque) const noexcept {
    return std::clamp(wanted_position(output_speed, torque), 0.0, 1.0);
}

double Variator::wanted_position(double output_speed, double torque) const noexcept {
    const double crank_speed = before * output_speed;  // at a ratio of 1
    const auto off = [&](double at) { return held_speed(at, torque) / ratio(at) - crank_speed; };
    const double found = holds_one_speed() ? 0 : position_where(off);
    if (found > 0 && found < 1) return found;
    return unbounded_position(held_speed(found, torque) / crank_speed);
}

double Variator::crank_share(double position, double torque) const noexcept {
    const double low = std::clamp(position - nudge, 0.0, 1 - 2 * nudge), high = low + 2 * nudge;
    const double rise = std::log(held_speed(high, torque) / held_speed(low, torque));
    const double shifted = std::log(ratio(low) / ratio(high));
    return rise + shifted > 0 ? rise / (rise + shifted) : 0;
}

}  // namespace windwall::driveline
