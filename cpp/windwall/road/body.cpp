#include "windwall/road/body.hpp"

namespace windwall::road {

double Body::rolling_coefficient(double speed) const noexcept {
    const double relative = speed / rise_speed;
    return rolling_resistance * (1 + rolling_rise * relative * relative);
}

double Body::rotating_mass(double rolling_radius) const noexcept {
    if (wheel_inertia) return *wheel_inertia / (rolling_radius * rolling_radius);
    return rotating_share * mass;
}

std::span<const fields::Row> Body::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("mass", "m", at<&Body::mass>, fields::mass("kg"), {20, 5000},
                 "Mass ready to run, with driver and fuel"),
        required("drag_area", "C_d A", at<&Body::drag_area>, area("m2"), {0.01, 5},
                 "Drag coefficient times frontal area"),
        with_default(
            "rolling_resistance", "C_rr", at<&Body::rolling_resistance>, number(), {0, 0.1}, 0.003,
            "Rolling resistance over weight at low speed, tyres and wheel bearings",
            "0.01 on new and 0.02 on worn asphalt, Carvill, Mechanical Engineer's Data Handbook; "
            "the mean of car tyres in NAS Special Report 286 is 0.010"),
        with_default(
            "rolling_rise", "k_v", at<&Body::rolling_rise>, percent(), {0, 200}, 5,
            "Share by which rolling resistance has risen at 100 km/h, with the square of speed",
            "a constant coefficient, chosen by the project; what rises with the square cannot be "
            "told from drag in a coast-down"),
        optional("wheel_inertia", "J_w", at<&Body::wheel_inertia>, inertia("kg m2"), {0, 50},
                 "Moment of inertia of all wheels together"),
        with_default(
            "rotating_share", "", at<&Body::rotating_share>, percent(), {0, 20}, 1,
            "Mass that turning wheels add to the accelerated mass where their inertia is unknown",
            "motorcycle coast-down rules allow 4 % where it was not measured (TAP-115/116)"),
    };
    return table;
}

}  // namespace windwall::road
