#include "windwall/solve/results/flyweight_fit.hpp"

namespace windwall::solve {

std::span<const fields::Row> FlyweightFit::rows() {
    using namespace fields;
    using F = FlyweightFit;
    static constexpr Row table[] = {
        group("ending", at<&F::ending>, "How the question ended"),
        fact("address", at<&F::address>, "The weights that are fitted"),
        result("torque", "T", at<&F::torque>, fields::torque("N m"),
               "Full throttle at the flywheel where the belt is to begin to shift"),
        result("end_torque", "T_1", at<&F::end_torque>, fields::torque("N m"),
               "The same where it is to have shifted"),
        result("weight_mass", "m_f", at<&F::weight_mass>, mass("g"), "Mass of one weight"),
        result("spring_preload", "F_p0", at<&F::spring_preload>, force("N"),
               "Force of the spring with the sheave open; that of before unless an engagement is "
               "wanted"),
        result("spring_rate", "k_p", at<&F::spring_rate>, stiffness("N/mm"),
               "Rate of the spring, on the ramp there is"),
        result("ramp_closed", "R'_1", at<&F::ramp_closed>, number(),
               "Or the ramp with the sheave closed, with the spring rate there is"),
        result("engagement_speed", "N_e", at<&F::engagement_speed>, angular_speed("rpm"),
               "Engine speed at which the belt is gripped then"),
    };
    return table;
}

}  // namespace windwall::solve
