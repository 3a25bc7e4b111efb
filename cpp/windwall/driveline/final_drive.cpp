#include "windwall/driveline/final_drive.hpp"

namespace windwall::driveline {

Shaft FinalDrive::drive(const Shaft& in, GearState) const noexcept {
    return transmit(in, fixed_ratio, {efficiency, drag_torque, churning_torque});
}

std::span<const fields::Row> FinalDrive::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("ratio", "i", at<&FinalDrive::fixed_ratio>, number(), {0.1, 30},
                 "Turns of the input for one turn of the output"),
        with_default(
            "efficiency", "eta", at<&FinalDrive::efficiency>, number(), {0.5, 1}, 0.02,
            "Share of the torque that gets through, drag aside",
            "between the hypoid axle's 0.90 to 0.93 and the spur pair's 0.99 of Joachim, Boerner "
            "and Kurz, Gear Technology, September 2012; a bevel pair was judged"),
        with_default("drag_torque", "T_d", at<&FinalDrive::drag_torque>, torque("N m"), {0, 20},
                     0.3, "Drag at the input whatever the load", "no source"),
        with_default("churning_torque", "T_v", at<&FinalDrive::churning_torque>, torque("N m"),
                     {0, 50}, 0.2,
                     "Further drag at an input speed of 5000 rpm, in proportion to speed",
                     "left to the drag torque unless measured, chosen by the project"),
        with_default("inertia", "J", at<&FinalDrive::inertia>, fields::inertia("kg m2"), {0, 1},
                     0.001, "Moment of inertia, as felt at the input",
                     "derived: 2 kg of gears, 90 mm across"),
    };
    return table;
}

}  // namespace windwall::driveline
