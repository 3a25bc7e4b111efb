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
    return variator().ratio(gear_state.position);
}

std::optional<double> BeltCvt::capacity(GearState gear_state) const noexcept {
    if (slip_torque) return slip_torque;
    if (sheaves) return sheaves->capacity(ratio(gear_state));
    return std::nullopt;
}

double BeltCvt::slip_share(double torque, GearState gear_state) const noexcept {
    const double size = std::abs(torque);
    const double creep = bent(slip * size / rated_torque);
    const std::optional<double> most = capacity(gear_state);
    if (!most) return creep;
    const double beyond = (std::min(size / *most, 1.0) - slip_knee) / (1 - slip_knee);
    return creep + slip_at_capacity * std::pow(std::max(beyond, 0.0), 2);
}

Shaft BeltCvt::drive(const Shaft& in, GearState gear_state) const noexcept {
    const double held = held_torque(in.torque, capacity(gear_state));
    const double reduction = ratio(gear_state);
    const double passed = 1 - load_loss - ratio_loss * std::abs(std::log(reduction));
    // The drag is taken off behind the share of the load: T - T_0 - k T.
    const Losses losses{passed, drag_share * rated_torque / passed, churning_torque / passed};
    return lagging(transmit({in.speed, held}, reduction, losses), slip_share(held, gear_state));
}

double BeltCvt::efficiency(const Shaft& in, GearState gear_state) const noexcept {
    const double power = in.power();
    return power > 0 ? std::max(0.0, drive(in, gear_state).power()) / power : 0;
}

std::array<media::LumpedNode, 1> BeltCvt::thermal_nodes(double loss,
                                                        double air_temperature) const noexcept {
    return {{{"belt", belt_mass * belt_heat_capacity, loss, 0, 0, to_air, air_temperature}}};
}

std::optional<fields::Violation> BeltCvt::check() const {
    if (high_ratio < low_ratio) return std::nullopt;
    return fields::Violation{"high_ratio",
                             "Shifted up, a variator reduces less than at its low end: the high "
                             "ratio is the smaller number."};
}

std::span<const fields::Row> BeltCvt::rows() {
    using namespace fields;
    using B = BeltCvt;
    static constexpr Row table[] = {
        required("low_ratio", "i_low", at<&B::low_ratio>, number(), {1, 8},
                 "Turns of the driving sheave for one of the driven one before it shifts"),
        required("high_ratio", "i_high", at<&B::high_ratio>, number(), {0.3, 3},
                 "The same when fully shifted up; below 1 is an overdrive"),
        required("shift_speed", "N_s", at<&B::shift_speed>, angular_speed("rpm"), {500, 20000},
                 "Speed of the driving sheave that the weights and springs hold while it shifts"),
        required("rated_torque", "T_r", at<&B::rated_torque>, torque("N m"), {1, 1000},
                 "Torque at the driving sheave to which drag and slip are stated"),
        with_default("drag_share", "k_0", at<&B::drag_share>, number(), {0, 0.3}, 0.02,
                     "Torque lost whatever the load, as a share of the rated torque",
                     "no source; no map of a rubber belt could be read"),
        with_default("load_loss", "k_T", at<&B::load_loss>, number(), {0, 0.4}, 0.033,
                     "Share of the torque lost in bending, compressing and shearing the belt",
                     "no source; no map of a rubber belt could be read"),
        with_default("ratio_loss", "k_i", at<&B::ratio_loss>, number(), {0, 0.2}, 0.03,
                     "Further share lost for each factor e of ratio away from 1 to 1",
                     "no source; no map of a rubber belt could be read"),
        with_default(
            "churning_torque", "T_v", at<&B::churning_torque>, torque("N m"), {0, 50}, 0.3,
            "Further torque lost at 5000 rpm of the driving sheave, in proportion to speed",
            "left to the drag unless measured, chosen by the project"),
        with_default("slip", "s", at<&B::slip>, percent(), {0, 10}, 1,
                     "Share of speed lost to slip at the rated torque, in proportion to torque",
                     "no source; slip is the smaller part of the loss (Chen, Lee and Sung 1998, "
                     "abstract)"),
        optional("slip_torque", "T_s", at<&B::slip_torque>, torque("N m"), {1, 2000},
                 "Torque at the driving sheave from which on the belt slips through"),
        optional(
            "engagement_speed", "N_e", at<&B::engagement_speed>, angular_speed("rpm"), {500, 12000},
            "Speed of the driving sheave at which it takes the belt along; not for a belt that "
            "always runs behind a clutch"),
        optional_group("sheaves", at<&B::sheaves>,
                       "Sizes and clamp force, for the torque at which the belt slips through"),
        with_default("inertia", "J_1", at<&B::inertia>, fields::inertia("kg m2"), {0, 1}, 0.004,
                     "Moment of inertia of the driving sheave", "derived: 3.3 kg, 140 mm across"),
        with_default("driven_inertia", "J_2", at<&B::driven_inertia>, fields::inertia("kg m2"),
                     {0, 1}, 0.005, "Moment of inertia of the driven sheave",
                     "derived: 3 kg, 165 mm across"),
        with_default("belt_mass", "m_b", at<&B::belt_mass>, mass("kg"), {0.05, 10}, 0.2,
                     "Mass of the belt, which has to warm up", "estimate"),
        with_default("to_air", "G_b", at<&B::to_air>, conductance("W/K"), {0.1, 300}, 10,
                     "Heat that the running belt, with its sheaves for fins, gives to the air "
                     "around it for a kelvin",
                     "a housing with air blown through; estimate"),
    };
    return table;
}

}  // namespace windwall::driveline
