#include "windwall/driveline/belt_cvt.hpp"

#include <cmath>

namespace windwall::driveline {
namespace {

using fields::Violation;

/// Where several things are stated that only make sense together, or exclude each other.
std::optional<Violation> stated_together(const BeltCvt& part) {
    if (part.flyweights.has_value() != part.torque_cam.has_value())
        return Violation{part.flyweights ? "torque_cam" : "flyweights",
                         "flyweights and torque_cam are stated together: each balances the other"};
    if (part.flyweights && !part.sheaves)
        return Violation{"sheaves",
                         "flyweights and torque_cam balance at radii that sheaves state"};
    if (part.flyweights && part.shift_speed)
        return Violation{"shift_speed",
                         "the shift speed follows from flyweights and torque_cam: state one or the "
                         "other"};
    if (!part.flyweights && !part.shift_speed)
        return Violation{"shift_speed",
                         "either shift_speed is needed, or flyweights and torque_cam that make it"};
    if (part.shift_end_speed && !part.shift_speed)
        return Violation{"shift_end_speed", "a shift that ends at a speed begins at a shift_speed"};
    if (!part.sheaves) return std::nullopt;
    if (part.flyweights && part.sheaves->clamp_force)
        return Violation{"sheaves",
                         "clamp_force follows from flyweights and torque_cam: leave it out"};
    if (!part.flyweights && !part.sheaves->clamp_force && !part.sheaves->travel)
        return Violation{"sheaves",
                         "sheaves say something with their clamp_force or their travel, or beside "
                         "flyweights and torque_cam"};
    return std::nullopt;
}

/// A line that falls faster than the ratio lets the road gain would shift at once.
std::optional<Violation> snaps(const BeltCvt& part) {
    if (!part.shift_speed || !part.shift_end_speed) return std::nullopt;
    const double span = std::log(part.low_ratio / part.high_ratio);
    if (*part.shift_speed / *part.shift_end_speed - 1 < span ||
        part.shift_end_speed >= part.shift_speed)
        return std::nullopt;
    return Violation{
        "shift_end_speed",
        "the engine would slow faster than the ratio falls, and the belt shift at once"};
}

}  // namespace

std::optional<Violation> BeltCvt::check() const {
    if (high_ratio >= low_ratio)
        return Violation{"high_ratio",
                         "Shifted up, a variator reduces less than at its low end: the high ratio "
                         "is the smaller number."};
    if (auto violation = stated_together(*this)) return violation;
    if (auto violation = snaps(*this)) return violation;
    if (sheaves && !sheaves->check() && !(sheaves->fits(low_ratio) && sheaves->fits(high_ratio)))
        return Violation{
            "sheaves",
            "a belt of this length is too long for the distance between the shafts: at one "
            "of the ratios the sheaves would touch"};
    return std::nullopt;
}

namespace {

using namespace fields;
using B = BeltCvt;

constexpr Row table[] = {
    required("low_ratio", "i_low", at<&B::low_ratio>, number(), {1, 8},
             "Turns of the driving sheave for one of the driven one before it shifts"),
    required("high_ratio", "i_high", at<&B::high_ratio>, number(), {0.3, 3},
             "The same when fully shifted up; below 1 is an overdrive"),
    optional("shift_speed", "N_s", at<&B::shift_speed>, angular_speed("rpm"), {500, 20000},
             "Speed of the driving sheave where it begins to shift, which the weights and "
             "springs hold from there on; left out where these are stated themselves"),
    optional("shift_end_speed", "N_s1", at<&B::shift_end_speed>, angular_speed("rpm"), {500, 20000},
             "The same where it has fully shifted, with a straight line between both; as where "
             "it begins if it is not stated"),
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
    with_default("churning_torque", "T_v", at<&B::churning_torque>, torque("N m"), {0, 50}, 0.3,
                 "Further torque lost at 5000 rpm of the driving sheave, in proportion to speed",
                 "left to the drag unless measured, chosen by the project"),
    with_default("slip", "s", at<&B::slip>, percent(), {0, 10}, 1,
                 "Share of speed lost to slip at the rated torque, in proportion to torque",
                 "no source; slip is the smaller part of the loss (Chen, Lee and Sung 1998, "
                 "abstract)"),
    optional("slip_torque", "T_s", at<&B::slip_torque>, torque("N m"), {1, 2000},
             "Torque at the driving sheave from which on the belt slips through"),
    optional("engagement_speed", "N_e", at<&B::engagement_speed>, angular_speed("rpm"),
             {500, 12000},
             "Speed of the driving sheave at which it takes the belt along; not for a belt that "
             "always runs behind a clutch"),
    optional("glaze_temperature", "T_g", at<&B::glaze_temperature>, temperature("degC"), {40, 250},
             "Temperature of the belt from which on its flanks glaze")
        .watching("/variator/temperature", "A belt that glazes slips, and then burns or tears."),
    optional_group("sheaves", at<&B::sheaves>,
                   "Sizes and clamp force, for the torque at which the belt slips through"),
    optional_group("flyweights", at<&B::flyweights>,
                   "Weights, ramp and spring of the driving sheave, for the engine speed at "
                   "which forces balance; with sheaves and torque_cam, in place of shift_speed"),
    optional_group("torque_cam", at<&B::torque_cam>,
                   "Spring and helix of the driven sheave, for the same"),
    with_default("inertia", "J_1", at<&B::inertia>, fields::inertia("kg m2"), {0, 1}, 0.004,
                 "Moment of inertia of the driving sheave", "derived: 3.3 kg, 140 mm across"),
    with_default("driven_inertia", "J_2", at<&B::driven_inertia>, fields::inertia("kg m2"), {0, 1},
                 0.005, "Moment of inertia of the driven sheave", "derived: 3 kg, 165 mm across"),
    with_default("belt_mass", "m_b", at<&B::belt_mass>, mass("kg"), {0.05, 10}, 0.2,
                 "Mass of the belt, which has to warm up", "estimate"),
    with_default("to_air", "G_b", at<&B::to_air>, conductance("W/K"), {0.1, 300}, 10,
                 "Heat that the running belt, with its sheaves for fins, gives to the air "
                 "around it for a kelvin",
                 "a housing with air blown through; estimate"),
};

}  // namespace

std::span<const Row> BeltCvt::rows() { return table; }

}  // namespace windwall::driveline
