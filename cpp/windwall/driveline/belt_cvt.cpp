#include "windwall/driveline/belt_cvt.hpp"

#include "windwall/driveline/losses.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {
namespace {

/// Slip in proportion to torque makes no sense far beyond the rating; from 0.1 it bends towards
/// 0.5, so that the output always turns.
double bent(double slip) noexcept {
    constexpr double knee = 0.1, room = 0.4;
    if (slip <= knee) return slip;
    return knee + room * (1 - std::exp((knee - slip) / room));
}

}  // namespace

double BeltCvt::ratio(GearState gear_state) const noexcept {
    return ratio_between(low_ratio, reached_ratio(), gear_state.position);
}

double BeltCvt::reached_ratio() const noexcept {
    return sheaves ? sheaves->reached(low_ratio, high_ratio) : high_ratio;
}

BeltLosses BeltCvt::losses() const noexcept {
    return {drag_share * rated_torque, load_loss, ratio_loss, churning_torque};
}

std::optional<ForceBalance> BeltCvt::forces() const noexcept {
    if (!sheaves || !flyweights || !torque_cam) return std::nullopt;
    return ForceBalance(*sheaves, *flyweights, *torque_cam, losses(), low_ratio, reached_ratio());
}

Variator BeltCvt::variator() const noexcept {
    const double begin = shift_speed.value_or(0);
    return {low_ratio, reached_ratio(), {begin, shift_end_speed.value_or(begin)}, forces(), 1};
}

std::optional<double> BeltCvt::capacity(double speed, GearState gear_state) const noexcept {
    if (slip_torque) return slip_torque;
    if (const auto balance = forces()) return balance->capacity(speed, ratio(gear_state));
    if (sheaves && sheaves->clamp_force)
        return sheaves->capacity(*sheaves->clamp_force, ratio(gear_state));
    return std::nullopt;
}

std::optional<double> BeltCvt::clamp_force(const Shaft& in, GearState gear_state) const noexcept {
    if (const auto balance = forces())
        return balance->clamp_force(in.speed, in.torque, ratio(gear_state));
    return sheaves ? sheaves->clamp_force : std::nullopt;
}

std::optional<double> BeltCvt::taking_hold(double torque) const noexcept {
    if (engagement_speed) return engagement_speed;
    if (const auto balance = forces()) return balance->holding_speed(torque);
    return std::nullopt;
}

double BeltCvt::slip_share(const Shaft& in, GearState gear_state) const noexcept {
    const double size = std::abs(in.torque);
    const double creep = bent(slip * size / rated_torque);
    const std::optional<double> most = capacity(in.speed, gear_state);
    if (!most) return creep;
    const double used = size < *most ? size / *most : 1;
    return creep +
           slip_at_capacity * std::pow(std::max(used - slip_knee, 0.0) / (1 - slip_knee), 2);
}

Shaft BeltCvt::drive(const Shaft& in, GearState gear_state) const noexcept {
    const Shaft held{in.speed, held_torque(in.torque, capacity(in.speed, gear_state))};
    const double reduction = ratio(gear_state);
    return lagging(transmit(held, reduction, losses().at(reduction)), slip_share(held, gear_state));
}

double BeltCvt::efficiency(const Shaft& in, GearState gear_state) const noexcept {
    const double power = in.power();
    return power > 0 ? std::max(0.0, drive(in, gear_state).power()) / power : 0;
}

std::array<media::LumpedNode, 1> BeltCvt::thermal_nodes(double loss,
                                                        double air_temperature) const noexcept {
    return {belt_node(belt_mass, loss, to_air, air_temperature)};
}

}  // namespace windwall::driveline
