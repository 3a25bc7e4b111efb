#include "windwall/driveline/chain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::driveline {

double chain_speed_ripple(double teeth) noexcept { return 1 - std::cos(std::numbers::pi / teeth); }

Shaft Chain::drive(const Shaft& in, GearState gear_state) const noexcept {
    return transmit(in, ratio(gear_state), {efficiency, drag_torque, 0});
}

double Chain::speed_ripple() const noexcept {
    return chain_speed_ripple(std::min(teeth_front, teeth_rear));
}

std::span<const fields::Row> Chain::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        whole(required("teeth_front", "z_1", at<&Chain::teeth_front>, number(), {6, 200},
                       "Teeth of the wheel on the engine's side")),
        whole(required("teeth_rear", "z_2", at<&Chain::teeth_rear>, number(), {6, 200},
                       "Teeth of the wheel on the road's side")),
        with_default(
            "efficiency", "eta", at<&Chain::efficiency>, number(), {0.5, 1}, 0.015,
            "Share of the torque that gets through, drag aside",
            "0.96 to 0.99 below 75 mph, Burgess and Lodge, Sports Engineering 7 (2004), abstract"),
        with_default("drag_torque", "T_d", at<&Chain::drag_torque>, torque("N m"), {0, 20}, 0.1,
                     "Drag at the front wheel whatever the load", "no source"),
        with_default("inertia", "J", at<&Chain::inertia>, fields::inertia("kg m2"), {0, 1}, 0.001,
                     "Moment of inertia, as felt at the front wheel",
                     "derived: 0.5 kg of wheel and chain at 45 mm from the axis"),
    };
    return table;
}

}  // namespace windwall::driveline
