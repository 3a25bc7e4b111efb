#include "windwall/driveline/launch.hpp"

#include <algorithm>

namespace windwall::driveline {
namespace {

constexpr double as_good = 1e-3;
constexpr double bottom = 0;  // a variator starts at its lowest gearing

template <class T>
concept HoldsBySpeed = requires(const T& part, double torque) {
    { part.holding_speed(torque) } -> std::same_as<double>;
};
template <class T>
concept HeldByHand = requires(const T& part) {
    { part.launch_speed } -> std::convertible_to<double>;
};

/// Engine speed, of a part whose input turns `before` times as slowly as the crank.
std::optional<double> held_by(const Part& part, double torque, double before) noexcept {
    return part.visit([&]<class Each>(const Each& each) -> std::optional<double> {
        if constexpr (HeldByHand<Each>) return each.launch_speed;
        if constexpr (HoldsBySpeed<Each>) return each.holding_speed(torque * before) * before;
        if constexpr (Varying<Each>)
            if (each.engagement_speed) return *each.engagement_speed * before;
        return std::nullopt;
    });
}

/// Engine speed at which a belt grips that nothing but its weights takes along.
std::optional<double> gripped_by(const Part& part, double torque, double before) noexcept {
    return part.visit([&]<class Each>(const Each& each) -> std::optional<double> {
        if constexpr (Varying<Each>)
            if (const auto speed = each.taking_hold(torque * before)) return *speed * before;
        return std::nullopt;
    });
}

double own_bottom_ratio(const Part& part) noexcept {
    return part.visit([](const auto& each) { return each.ratio({0, bottom}); });
}

}  // namespace

std::optional<double> launch_speed(const Train& train, double torque) noexcept {
    for (auto* speed_of : {&held_by, &gripped_by}) {
        double before = 1;
        for (const auto& entry : train) {
            if (const auto speed = speed_of(entry.part, torque, before)) return speed;
            before *= own_bottom_ratio(entry.part);
        }
    }
    return std::nullopt;
}

double launch_acceleration(const Train& train, const Start& start, GearState gear_state) noexcept {
    const double driven = drive(train, start.crank, gear_state).torque;
    const double pull = std::min(driven, start.grip_torque) - start.resistance;
    return pull / (start.vehicle_inertia + inertia_at_wheels(train, gear_state, Behind::clutch));
}

std::size_t launch_gear(const Train& train, const Start& start) noexcept {
    std::size_t best = 0;
    double most = launch_acceleration(train, start, {0, bottom});
    for (std::size_t gear = 1; gear < gears(train); ++gear) {
        const double here = launch_acceleration(train, start, {gear, bottom});
        const double margin = as_good * std::max(here, most);
        const bool shorter =
            total_ratio(train, {gear, bottom}) > total_ratio(train, {best, bottom});
        if (here > most + margin || (here > most - margin && shorter)) {
            best = gear;
            most = here;
        }
    }
    return best;
}

}  // namespace windwall::driveline
