#include "windwall/solve/full_throttle/gear_range.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/held_speeds.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double slope_step = 1e-4;      // of a segment, for a slope
constexpr std::size_t looks_along = 16;  // in search of an engine speed along a shift

double between(double a, double b, double part) noexcept {
    return (1 - part) * a + part * b;  // exact at both ends
}

}  // namespace

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear)
    : GearRange(vehicle, gear, vehicle::speed_limit(vehicle)) {}

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling)
    : GearRange(vehicle, gear, ceiling,
                [usual = vehicle::usual_torque(vehicle)](const DrivelineState&) { return usual; }) {
}

GearRange::GearRange(const vehicle::Vehicle& vehicle, std::size_t gear, double ceiling,
                     const FullThrottleTorque& torque) {
    const double launch = vehicle::launch_speed(vehicle);
    const double top = std::clamp(ceiling, launch, vehicle::speed_limit(vehicle));
    const auto variator = driveline::variator(vehicle.driveline, gear);
    if (!variator) {
        add({launch, {gear, 1}}, {top, {gear, 1}});
        return;
    }
    shifted_ = std::log(variator->low_ratio / variator->high_ratio);
    const HeldSpeeds held = held_speeds(*variator, gear, launch, torque);
    if (held.speeds.front() > launch)
        add({launch, {gear, 0}}, {std::min(held.speeds.front(), top), {gear, 0}});
    if (held.speeds.front() > top) return;
    add_shift(gear, held.positions, held.speeds, top);
    const DrivelineState& shifted = segments_[count_ - 1].to;
    if (shifted.gear_state.position >= 1 && shifted.engine_speed < top)
        add(shifted, {top, {gear, 1}});
}

void GearRange::add(const DrivelineState& from, const DrivelineState& to) {
    segments_[count_++] = {from, to};
}

void GearRange::add_shift(std::size_t gear, const std::vector<double>& positions,
                          const std::vector<double>& speeds, double top) {
    const bool one_speed =
        std::ranges::count(speeds, speeds.front()) == static_cast<std::ptrdiff_t>(speeds.size());
    add({speeds.front(), {gear, 0}}, {speeds.back(), {gear, 1}});
    if (one_speed) return;
    Segment& shift = segments_[count_ - 1];
    shift.speeds.emplace(positions, speeds, numerics::Interpolation::monotone);
    const double end = end_of_shift(*shift.speeds, top);
    shift.to = {end < 1 ? top : speeds.back(), {gear, end}};
}

std::size_t GearRange::segment_at(double along) const noexcept {
    return std::min(static_cast<std::size_t>(std::clamp(along, 0.0, end())), count_ - 1);
}

double GearRange::engine_speed(const Segment& segment, double part) const noexcept {
    if (!segment.speeds || part <= 0 || part >= 1)
        return between(segment.from.engine_speed, segment.to.engine_speed, part);
    return segment.speeds
        ->at(between(segment.from.gear_state.position, segment.to.gear_state.position, part))
        .value;
}

DrivelineState GearRange::at(double along) const noexcept {
    const double inside = std::clamp(along, 0.0, end());
    const std::size_t i = segment_at(along);
    const Segment& segment = segments_[i];
    const double part = inside - static_cast<double>(i);
    return {engine_speed(segment, part),
            {segment.from.gear_state.gear,
             between(segment.from.gear_state.position, segment.to.gear_state.position, part)}};
}

double GearRange::share_of(const Segment& segment, double part) const noexcept {
    const double low = std::clamp(part - slope_step, 0.0, 1 - 2 * slope_step),
                 high = low + 2 * slope_step;
    const double rise = std::log(engine_speed(segment, high) / engine_speed(segment, low));
    const double moved = segment.to.gear_state.position - segment.from.gear_state.position;
    const double gained = rise + shifted_ * moved * (high - low);
    return gained > 0 ? rise / gained : 0;
}

double GearRange::crank_share(double along) const noexcept {
    const std::size_t i = segment_at(along);
    if (!shifts(i)) return 1;
    if (!segments_[i].speeds) return 0;
    return share_of(segments_[i], std::clamp(along, 0.0, end()) - static_cast<double>(i));
}

void GearRange::add_crossings(std::size_t segment, double engine_speed,
                              std::vector<driveline::GearState>& found) const {
    const double start = static_cast<double>(segment);
    const Segment& here = segments_[segment];
    if (!shifts(segment)) {  // set the same at every engine speed: nothing to search for
        const bool at_end = segment + 1 == count_ && engine_speed == here.to.engine_speed;
        const bool within =
            engine_speed >= here.from.engine_speed && engine_speed < here.to.engine_speed;
        if ((within || at_end) &&
            (found.empty() || found.back().position != here.from.gear_state.position))
            found.push_back(here.from.gear_state);
        return;
    }
    if (!here.speeds) {
        if (here.from.engine_speed != engine_speed) return;
        for (const double part : {0.0, 0.5, 1.0})
            found.push_back(at(start + part).gear_state);
        return;
    }
    const auto off = [&](double along) { return at(along).engine_speed - engine_speed; };
    for (std::size_t i = 0; i < looks_along; ++i) {
        const double low = start + static_cast<double>(i) / looks_along;
        const double high = start + static_cast<double>(i + 1) / looks_along;
        const bool last = segment + 1 == count_ && i + 1 == looks_along;
        if (off(low) * off(high) > 0 || (off(high) == 0 && !last)) continue;
        const auto state = at(numerics::find_root(off, low, high).x).gear_state;
        if (found.empty() || found.back().position != state.position) found.push_back(state);
    }
}

std::vector<driveline::GearState> GearRange::states_at(double engine_speed) const {
    std::vector<driveline::GearState> found;
    for (std::size_t segment = 0; segment < count_; ++segment)
        add_crossings(segment, engine_speed, found);
    if (found.empty())
        found.push_back((engine_speed < segments_[0].from.engine_speed ? segments_[0].from
                                                                       : segments_[count_ - 1].to)
                            .gear_state);
    return found;
}

bool GearRange::shifts(std::size_t segment) const noexcept {
    return segments_[segment].from.gear_state.position != segments_[segment].to.gear_state.position;
}

std::optional<std::array<double, 2>> usual_shift(const vehicle::Vehicle& vehicle) noexcept {
    const auto variator = driveline::variator(vehicle.driveline);
    if (!variator) return std::nullopt;
    const double torque = vehicle::usual_torque(vehicle);
    return std::array{variator->held_speed(0, torque), variator->held_speed(1, torque)};
}

}  // namespace windwall::solve
