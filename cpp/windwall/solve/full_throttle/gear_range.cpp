#include "windwall/solve/sweep.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>

namespace windwall::solve {

Sweep::Sweep(const vehicle::Vehicle& vehicle, std::size_t gear) {
    const double limit = vehicle::speed_limit(vehicle);
    const double launch = vehicle::launch_speed(vehicle);
    const auto variator = driveline::variator(vehicle.driveline, gear);
    if (!variator) {
        add({launch, gear}, {limit, gear});
        return;
    }
    const double held = std::clamp(variator->held_speed, launch, limit);
    if (held > launch) add({launch, {gear, 0}}, {held, {gear, 0}});
    add({held, {gear, 0}}, {held, {gear, 1}});
    if (held < limit) add({held, {gear, 1}}, {limit, {gear, 1}});
}

void Sweep::add(const Setting& from, const Setting& to) noexcept {
    stretches_[count_++] = {from, to};
}

Setting Sweep::at(double along) const noexcept {
    const double inside = std::clamp(along, 0.0, static_cast<double>(count_));
    const std::size_t i = std::min(static_cast<std::size_t>(inside), count_ - 1);
    const auto& [from, to] = stretches_[i];
    const double part = inside - static_cast<double>(i);
    // Both forms are exact at both ends.
    const auto between = [part](double a, double b) { return (1 - part) * a + part * b; };
    return {between(from.engine_speed, to.engine_speed),
            {from.stance.gear, between(from.stance.position, to.stance.position)}};
}

bool Sweep::shifts(std::size_t stretch) const noexcept {
    return stretches_[stretch].from.stance.position != stretches_[stretch].to.stance.position;
}

}  // namespace windwall::solve
