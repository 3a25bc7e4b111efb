#include "windwall/solve/full_throttle/held_speeds.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr std::size_t shift_steps = 16;
constexpr double raise = 1.25;
constexpr int most_raises = 40;
constexpr numerics::RootOptions settled_close{0, 1e-12, 100};

/// The speed that weights and springs ask for at the torque that the engine has at that speed. The
/// torque is 0 or more, so what they ask for without any is the least.
double settled_speed(const driveline::Variator& variator, driveline::GearState gear_state,
                     const FullThrottleTorque& torque) {
    const auto excess = [&](double speed) {
        return variator.held_speed(gear_state.position, torque({speed, gear_state})) - speed;
    };
    const double least = variator.held_speed(gear_state.position, 0);
    const double at_least = excess(least);
    double high = least + at_least, at_high = excess(high);
    for (int i = 0; i < most_raises && at_high > 0; ++i)
        at_high = excess(high *= raise);
    return numerics::find_root(excess, {least, high, at_least, at_high}, settled_close).x;
}

}  // namespace

HeldSpeeds held_speeds(const driveline::Variator& variator, std::size_t gear, double launch,
                       const FullThrottleTorque& torque) {
    HeldSpeeds held;
    for (std::size_t i = 0; i <= shift_steps; ++i) {
        const double position = static_cast<double>(i) / shift_steps;
        const double speed = variator.forces ? settled_speed(variator, {gear, position}, torque)
                                             : variator.held_speed(position, 0);
        held.positions.push_back(position);
        held.speeds.push_back(std::max(launch, speed));
    }
    return held;
}

double end_of_shift(const numerics::Table& speeds, double ceiling) {
    const auto above = [&](double position) { return speeds.at(position).value - ceiling; };
    for (std::size_t i = 1; i <= shift_steps; ++i) {
        const double high = static_cast<double>(i) / shift_steps;
        if (above(high) > 0) return numerics::find_root(above, high - 1.0 / shift_steps, high).x;
    }
    return 1;
}

}  // namespace windwall::solve
