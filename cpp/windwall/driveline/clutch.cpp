#include "windwall/driveline/clutch.hpp"

#include "windwall/driveline/losses.hpp"

namespace windwall::driveline {

Shaft Clutch::drive(const Shaft& in, GearState) const noexcept {
    return {in.speed, held_torque(in.torque, capacity)};
}

std::span<const fields::Row> Clutch::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        optional("capacity", "T_c", at<&Clutch::capacity>, fields::torque("N m"), {1, 2000},
                 "Torque above which the clutch slips"),
        with_default("inertia", "J", at<&Clutch::inertia>, fields::inertia("kg m2"), {0, 1}, 0.003,
                     "Moment of inertia that turns with the crank",
                     "derived: 2 kg of cover and plates, 140 mm across"),
        with_default("launch_speed", "N_c", at<&Clutch::launch_speed>, fields::angular_speed("rpm"),
                     {500, 12000}, 500, "Engine speed held at the start while the clutch slips",
                     "common practice, about half the speed of peak torque"),
    };
    return table;
}

}  // namespace windwall::driveline
