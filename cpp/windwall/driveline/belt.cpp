#include "windwall/driveline/belt.hpp"

#include "windwall/driveline/losses.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace windwall::driveline {

double belt_tension_ratio(double friction, double wrap, double half_angle) noexcept {
    return std::exp(friction * wrap / std::sin(half_angle));
}

double belt_pull(double strands, double linear_density, double speed,
                 double tension_ratio) noexcept {
    const double useful = std::max(0.0, strands - 2 * linear_density * speed * speed);
    return useful * (tension_ratio - 1) / (tension_ratio + 1);
}

std::optional<double> Belt::capacity(double speed) const noexcept {
    if (!tension || section == BeltSection::toothed) return std::nullopt;
    const double front = diameter_front / 2, rear = diameter_rear / 2;
    const Wraps wraps = belt_wraps(front, rear, centre_distance);
    const double half = section == BeltSection::vee ? groove_angle / 2 : std::numbers::pi / 2;
    const double hold = belt_tension_ratio(friction, std::min(wraps.driving, wraps.driven), half);
    return front * belt_pull(2 * *tension, linear_density, speed * front, hold);
}

double Belt::slip_share(const Shaft& in, GearState) const noexcept {
    return section == BeltSection::toothed || in.torque == 0 ? 0 : creep;
}

Shaft Belt::drive(const Shaft& in, GearState gear_state) const noexcept {
    const Shaft held{in.speed, held_torque(in.torque, capacity(in.speed))};
    const Shaft out = transmit(held, ratio(gear_state), {efficiency, drag_torque, 0});
    return lagging(out, slip_share(held, gear_state));
}

std::array<media::LumpedNode, 1> Belt::thermal_nodes(double loss,
                                                     double air_temperature) const noexcept {
    const double length = belt_length(diameter_front / 2, diameter_rear / 2, centre_distance);
    return {belt_node(linear_density * length, loss, to_air, air_temperature)};
}

std::span<const fields::Row> Belt::rows() {
    using namespace fields;
    using B = Belt;
    static constexpr Row table[] = {
        choice("section", at<&B::section>,
               "flat, vee or toothed; a toothed belt neither creeps nor slips",
               "vee, chosen by the project"),
        required("diameter_front", "D_1", at<&B::diameter_front>, length("mm"), {20, 600},
                 "Pitch diameter of the pulley on the engine's side"),
        required("diameter_rear", "D_2", at<&B::diameter_rear>, length("mm"), {20, 600},
                 "Pitch diameter of the pulley on the road's side"),
        with_default("efficiency", "eta", at<&B::efficiency>, number(), {0.5, 1}, 0.015,
                     "Share of the torque that gets through, drag and creep aside",
                     "0.95 to 0.98 for new, aligned V-belts, a belt maker's notes"),
        with_default("drag_torque", "T_d", at<&B::drag_torque>, torque("N m"), {0, 20}, 0.1,
                     "Drag at the front pulley whatever the load", "no source"),
        with_default("creep", "s", at<&B::creep>, percent(), {0, 10}, 0.7,
                     "Share of speed lost because the loaded belt stretches", "no source"),
        optional("tension", "F", at<&B::tension>, force("N"), {5, 20000},
                 "Tension of each strand at rest; with it the torque at which the belt slips is "
                 "found"),
        with_default("centre_distance", "C", at<&B::centre_distance>, length("mm"), {50, 3000}, 100,
                     "Distance between the two shafts, for the wraps", "common practice"),
        with_default("friction", "mu", at<&B::friction>, number(), {0.05, 0.9}, 0.1,
                     "Coefficient of friction of the belt on its pulleys", "no source"),
        with_default("groove_angle", "2 beta", at<&B::groove_angle>, angle("deg"), {16, 60}, 2,
                     "Angle between the two faces of a V-belt's groove",
                     "34 to 38 deg by section and diameter, Design Manual for Power Transmission "
                     "Belts, table 2"),
        with_default("linear_density", "m", at<&B::linear_density>, fields::linear_density("kg/m"),
                     {0.005, 3}, 0.05, "Mass of a metre of belt",
                     "derived: section A, 12.5 by 9 mm, of rubber at 1200 kg/m3"),
        with_default("inertia", "J", at<&B::inertia>, fields::inertia("kg m2"), {0, 1}, 0.002,
                     "Moment of inertia, as felt at the front pulley",
                     "derived: 1.2 kg of pulley, 140 mm across"),
        with_default("to_air", "G_b", at<&B::to_air>, conductance("W/K"), {0.1, 200}, 6,
                     "Heat that the running belt, with its pulleys for fins, gives to the air "
                     "around it for a kelvin",
                     "estimate"),
    };
    return table;
}

}  // namespace windwall::driveline
