#include "windwall/driveline/fit_flyweights.hpp"

#include <cmath>

namespace windwall::driveline {
namespace {

double square(double of) noexcept { return of * of; }

/// The ramp at the end of the travel that closes with a force, N, at a speed: R R' of the weights,
/// m, with R = R_0 + (R'_0 + R'_1) x/2.
double ramp_for(double force, double speed, const Flyweights& closing, double travel) noexcept {
    const double product = force / (closing.weights * closing.weight_mass * square(speed));
    const double straight = closing.weight_radius + 0.5 * closing.ramp * travel;
    if (travel == 0) return product / straight;
    return (std::sqrt(square(straight) + 2 * travel * product) - straight) / travel;
}

}  // namespace

FittedFlyweights fit_flyweights(const BeltCvt& part, const WantedShift& wanted) noexcept {
    const ForceBalance balance = part.forces().value();
    const double high_ratio = part.reached_ratio();
    Flyweights closing = *part.flyweights;
    const Travel open = balance.place(part.low_ratio).closed,
                 shut = balance.place(high_ratio).closed;
    const double at_begin = balance.answered(part.low_ratio, wanted.begin_torque);
    const double at_end = balance.answered(high_ratio, wanted.end_torque);

    closing.weight_mass = 1;
    const double of_a_kilogram = closing.centrifugal(open);
    if (wanted.engagement_speed) {
        closing.weight_mass = at_begin / of_a_kilogram /
                              (square(wanted.begin_speed) - square(*wanted.engagement_speed));
        closing.spring_preload =
            closing.weight_mass * of_a_kilogram * square(*wanted.engagement_speed);
    } else {
        closing.weight_mass =
            (at_begin + closing.spring_preload) / of_a_kilogram / square(wanted.begin_speed);
    }
    FittedFlyweights fitted{closing.weight_mass, closing.spring_preload, closing.spring_rate,
                            closing.ramp_closed.value_or(closing.ramp)};
    if (!wanted.end_speed) return fitted;
    fitted.ramp_closed =
        ramp_for(at_end + closing.spring(shut), *wanted.end_speed, closing, shut.now);
    closing.spring_rate = 0;
    if (shut.now > 0)
        fitted.spring_rate = (closing.closing_force(*wanted.end_speed, shut) - at_end) / shut.now;
    return fitted;
}

}  // namespace windwall::driveline
