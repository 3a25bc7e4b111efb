#include "windwall/driveline/centrifugal_clutch.hpp"

#include "windwall/driveline/losses.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {

double CentrifugalClutch::grip() const noexcept {
    return shoes * friction * self_energising * drum_radius * shoe_mass * shoe_radius;
}

double CentrifugalClutch::capacity(double speed) const noexcept {
    return std::max(0.0, grip() * (speed * speed - engagement_speed * engagement_speed));
}

double CentrifugalClutch::holding_speed(double torque) const noexcept {
    return std::sqrt(engagement_speed * engagement_speed + std::max(0.0, torque) / grip());
}

Shaft CentrifugalClutch::drive(const Shaft& in, GearState) const noexcept {
    return {in.speed, held_torque(in.torque, capacity(in.speed))};
}

std::span<const fields::Row> CentrifugalClutch::rows() {
    using namespace fields;
    using C = CentrifugalClutch;
    static constexpr Row table[] = {
        required("engagement_speed", "N_e", at<&C::engagement_speed>, angular_speed("rpm"),
                 {300, 12000}, "Engine speed at which the shoes touch the drum"),
        required("shoe_mass", "m", at<&C::shoe_mass>, mass("g"), {5, 5000}, "Mass of one shoe"),
        required("drum_radius", "r_d", at<&C::drum_radius>, length("mm"), {15, 300},
                 "Inner radius of the drum"),
        required("shoe_radius", "r_g", at<&C::shoe_radius>, length("mm"), {10, 300},
                 "Radius to the centre of mass of a shoe"),
        whole(with_default("shoes", "n", at<&C::shoes>, number(), {1, 12}, 0.5, "Number of shoes",
                           "common practice")),
        with_default("friction", "mu", at<&C::friction>, number(), {0.05, 0.6}, 0.06,
                     "Coefficient of friction of the lining",
                     "0.35 to 0.40 for dry facings, The Tribology Handbook (Neale), table 7.4; "
                     "less when hot"),
        with_default(
            "self_energising", "k", at<&C::self_energising>, number(), {0.5, 3}, 0.3,
            "How many times a shoe that is dragged into the drum presses more than its mass does",
            "shoes that slide straight out; no source for how much leading shoes gain"),
        with_default("inertia", "J", at<&C::inertia>, fields::inertia("kg m2"), {0, 1}, 0.002,
                     "Moment of inertia that turns with the crank",
                     "derived: 1.2 kg of carrier and shoes, 140 mm across"),
    };
    return table;
}

}  // namespace windwall::driveline
