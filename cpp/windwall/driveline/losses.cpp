#include "windwall/driveline/losses.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {

namespace {

// Beyond 20 rad/s the hyperbolic tangent is 1 to the last digit.
double sense(double speed) noexcept {
    return std::abs(speed) < 20 ? std::tanh(speed) : std::copysign(1.0, speed);
}

}  // namespace

double drag(const Losses& losses, double speed) noexcept {
    return losses.drag_torque * sense(speed) + losses.churning * speed / churning_speed;
}

double held_torque(double torque, const std::optional<double>& capacity) noexcept {
    return capacity ? std::clamp(torque, -*capacity, *capacity) : torque;
}

Shaft taken(const Shaft& in, const std::optional<double>& capacity) noexcept {
    return {in.speed, in.power() < 0 ? held_torque(in.torque, capacity) : in.torque};
}

Shaft lagging(Shaft out, double share) noexcept {
    const bool drives = (out.speed < 0) == (out.torque < 0);
    out.speed = drives ? out.speed * (1 - share) : out.speed / (1 - share);
    return out;
}

Shaft transmit(const Shaft& in, double ratio, const Losses& losses) noexcept {
    const double net = in.torque - drag(losses, in.speed);
    const bool drives = (in.speed < 0) == (net < 0);
    const double passed = drives ? net * losses.efficiency : net / losses.efficiency;
    return {in.speed / ratio, passed * ratio};
}

}  // namespace windwall::driveline
