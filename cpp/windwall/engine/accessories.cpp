#include "windwall/engine/accessories.hpp"

namespace windwall::engine {

double Accessories::drag(double engine_speed) const noexcept {
    const double share = engine_speed / fan_speed;
    return torque + fan_torque * share * share;
}

std::span<const fields::Row> Accessories::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default("torque", "M_a", at<&Accessories::torque>, fields::torque("N m"), {0, 30}, 0.3,
                     "Drag on the crank that does not change with speed, such as a loaded dynamo",
                     "none unless stated; estimate of what is forgotten"),
        with_default(
            "fan_torque", "M_f", at<&Accessories::fan_torque>, fields::torque("N m"), {0, 30}, 0.3,
            "Drag on the crank that grows with the square of speed, such as a cooling fan, at "
            "fan_speed",
            "none unless stated; estimate of what is forgotten"),
        with_default("fan_speed", "N_f", at<&Accessories::fan_speed>, angular_speed("rpm"),
                     {500, 20000}, 0, "Engine speed at which fan_torque holds", "a reference"),
    };
    return table;
}

}  // namespace windwall::engine
