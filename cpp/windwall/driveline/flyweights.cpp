#include "windwall/driveline/flyweights.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {

double Flyweights::slope(Travel closed) const noexcept {
    const double end = ramp_closed.value_or(ramp);
    return closed.full > 0 ? ramp + (end - ramp) * closed.now / closed.full : ramp;
}

double Flyweights::radius(Travel closed) const noexcept {
    return weight_radius + 0.5 * (ramp + slope(closed)) * closed.now;
}

double Flyweights::centrifugal(Travel closed) const noexcept {
    return weights * weight_mass * radius(closed) * slope(closed);
}

double Flyweights::spring(Travel closed) const noexcept {
    return spring_preload + spring_rate * closed.now;
}

double Flyweights::closing_force(double speed, Travel closed) const noexcept {
    return centrifugal(closed) * speed * speed - spring(closed);
}

double Flyweights::speed_for(double force, Travel closed) const noexcept {
    return std::sqrt(std::max(0.0, force + spring(closed)) / centrifugal(closed));
}

std::span<const fields::Row> Flyweights::rows() {
    using namespace fields;
    using F = Flyweights;
    static constexpr Row table[] = {
        whole(with_default("weights", "n", at<&F::weights>, number(), {1, 12}, 0.5,
                           "Number of weights or rollers", "no source")),
        required("weight_mass", "m_f", at<&F::weight_mass>, mass("g"), {1, 1000},
                 "Mass of one weight"),
        required("weight_radius", "R_0", at<&F::weight_radius>, length("mm"), {10, 200},
                 "From the shaft to the centre of mass of a weight, with the sheave open"),
        required("ramp", "R'_0", at<&F::ramp>, number(), {0.05, 5},
                 "How far a weight goes outwards for each millimetre that the sheave closes, with "
                 "the sheave open"),
        optional("ramp_closed", "R'_1", at<&F::ramp_closed>, number(), {0.05, 5},
                 "The same with the sheave fully closed; as when open where it is not stated"),
        required("spring_preload", "F_p0", at<&F::spring_preload>, force("N"), {0, 5000},
                 "Force of the spring that holds the sheave open, with the sheave open"),
        required("spring_rate", "k_p", at<&F::spring_rate>, stiffness("N/mm"), {0, 200},
                 "By how much that spring presses harder for each millimetre that the sheave "
                 "closes"),
    };
    return table;
}

}  // namespace windwall::driveline
