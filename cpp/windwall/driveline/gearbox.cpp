#include "windwall/driveline/gearbox.hpp"

#include <algorithm>

namespace windwall::driveline {

std::size_t Gearbox::gears() const noexcept { return std::max<std::size_t>(ratios.size(), 1); }

double Gearbox::ratio(GearState gear_state) const noexcept {
    if (ratios.empty()) return 1;
    return ratios[std::min(gear_state.gear, ratios.size() - 1)];
}

Shaft Gearbox::drive(const Shaft& in, GearState gear_state) const noexcept {
    const double chosen = ratio(gear_state);
    const double through = chosen == 1 ? direct_efficiency.value_or(efficiency) : efficiency;
    return transmit(in, chosen, {through, drag_torque, churning_torque});
}

std::optional<fields::Violation> Gearbox::check() const {
    if (std::is_sorted(ratios.rbegin(), ratios.rend())) return std::nullopt;
    return fields::Violation{"ratios",
                             "Ratios go from first gear to top, so none may be larger than the "
                             "one before it."};
}

std::span<const fields::Row> Gearbox::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        list("ratios", "i", at<&Gearbox::ratios>, number(), {0.1, 20}, {1, 12},
             "Turns of the input for one turn of the output, from first gear to top"),
        with_default(
            "efficiency", "eta", at<&Gearbox::efficiency>, number(), {0.5, 1}, 0.015,
            "Share of the torque that gets through, drag aside",
            "two meshes of 0.990 to 0.998 each, Joachim, Boerner and Kurz, Gear Technology, "
            "September 2012, and bearings, which were judged"),
        optional("direct_efficiency", "eta_1", at<&Gearbox::direct_efficiency>, number(), {0.5, 1},
                 "The same in a gear of ratio 1, where no teeth are loaded"),
        with_default("drag_torque", "T_d", at<&Gearbox::drag_torque>, torque("N m"), {0, 20}, 0.3,
                     "Drag at the input whatever the load", "no source"),
        with_default(
            "churning_torque", "T_v", at<&Gearbox::churning_torque>, torque("N m"), {0, 50}, 0.3,
            "Further drag at an input speed of 5000 rpm, in proportion to speed", "no source"),
        with_default("inertia", "J", at<&Gearbox::inertia>, fields::inertia("kg m2"), {0, 1}, 0.002,
                     "Moment of inertia, as felt at the input",
                     "derived: 3 kg of gears, 90 mm across"),
        with_default("shift_time", "t_s", at<&Gearbox::shift_time>, time("s"), {0, 5}, 0.2,
                     "Time without drive at a change of gear", "common practice"),
    };
    return table;
}

}  // namespace windwall::driveline
