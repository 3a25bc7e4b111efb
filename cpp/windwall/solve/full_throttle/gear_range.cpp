#include "windwall/solve/full_throttle/gear_range.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>

namespace windwall::solve {

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear)
    : GearRange(vehicle, gear, vehicle::speed_limit(vehicle)) {}

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling) {
    const double limit = vehicle::speed_limit(vehicle);
    const double launch = vehicle::launch_speed(vehicle);
    const double top = std::clamp(ceiling, launch, limit);
    const auto variator = driveline::variator(vehicle.driveline, gear);
    const double held = variator ? std::clamp(variator->held_speed, launch, limit) : limit;
    if (!variator || top < held) {
        add({launch, {gear, variator ? 0.0 : 1.0}}, {top, {gear, variator ? 0.0 : 1.0}});
        return;
    }
    if (held > launch) add({launch, {gear, 0}}, {held, {gear, 0}});
    add({held, {gear, 0}}, {held, {gear, 1}});
    if (held < top) add({held, {gear, 1}}, {top, {gear, 1}});
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

DrivelineState GearRange::at_engine_speed(double engine_speed) const noexcept {
    std::size_t i = count_ - 1;
    while (i > 0 && engine_speed < segments_[i].from.engine_speed)
        --i;
    return {engine_speed, segments_[i].to.gear_state};
}

std::vector<driveline::GearState> GearRange::states_at(double engine_speed) const {
    for (std::size_t i = 0; i < count_; ++i) {
        const double from = static_cast<double>(i);
        if (shifts(i) && segments_[i].from.engine_speed == engine_speed)
            return {at(from).gear_state, at(from + 0.5).gear_state, at(from + 1).gear_state};
    }
    return {at_engine_speed(engine_speed).gear_state};
}

bool GearRange::shifts(std::size_t segment) const noexcept {
    return segments_[segment].from.gear_state.position != segments_[segment].to.gear_state.position;
}

}  // namespace windwall::solve
