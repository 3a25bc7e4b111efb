#include "windwall/solve/full_throttle/gear_range.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>

namespace windwall::solve {

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear) {
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

void GearRange::add(const DrivelineState& from, const DrivelineState& to) noexcept {
    segments_[count_++] = {from, to};
}

DrivelineState GearRange::at(double along) const noexcept {
    const double inside = std::clamp(along, 0.0, static_cast<double>(count_));
    const std::size_t i = std::min(static_cast<std::size_t>(inside), count_ - 1);
    const auto& [from, to] = segments_[i];
    const double part = inside - static_cast<double>(i);
    // Both forms are exact at both ends.
    const auto between = [part](double a, double b) { return (1 - part) * a + part * b; };
    return {between(from.engine_speed, to.engine_speed),
            {from.gear_state.gear, between(from.gear_state.position, to.gear_state.position)}};
}

bool GearRange::shifts(std::size_t segment) const noexcept {
    return segments_[segment].from.gear_state.position != segments_[segment].to.gear_state.position;
}

}  // namespace windwall::solve
