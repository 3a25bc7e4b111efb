#include "windwall/driveline/torque_cam.hpp"

#include <cmath>

namespace windwall::driveline {

double TorqueCam::force_per_torque() const noexcept {
    return torque_share / (cam_radius * std::tan(cam_angle));
}

double TorqueCam::closing_force(double torque, double opened) const noexcept {
    const double wound = torsion / (cam_radius * std::tan(cam_angle));
    return spring_preload + spring_rate * opened + wound + force_per_torque() * torque;
}

std::span<const fields::Row> TorqueCam::rows() {
    using namespace fields;
    using T = TorqueCam;
    static constexpr Row table[] = {
        required("spring_preload", "F_s0", at<&T::spring_preload>, force("N"), {1, 5000},
                 "Force of the spring along the shaft in the lowest gearing, with the sheave "
                 "closed"),
        required("spring_rate", "k_s", at<&T::spring_rate>, stiffness("N/mm"), {0, 200},
                 "By how much that spring presses harder for each millimetre that the belt draws "
                 "the sheave apart"),
        with_default("torsion", "tau_s", at<&T::torsion>, torque("N m"), {0, 100}, 1,
                     "Torque by which the spring is wound up, and so presses over the helix too",
                     "none unless stated, chosen by the project"),
        required("cam_radius", "r_h", at<&T::cam_radius>, length("mm"), {10, 150},
                 "Mean radius of the helix"),
        required("cam_angle", "alpha", at<&T::cam_angle>, angle("deg"), {15, 80},
                 "Angle of the helix from the plane across the shaft: a larger one presses less"),
        with_default("torque_share", "f", at<&T::torque_share>, number(), {0, 1}, 0.15,
                     "Share of the torque that reaches the shaft over the helix; 0 without one",
                     "both halves drag the belt alike; no source"),
    };
    return table;
}

}  // namespace windwall::driveline
