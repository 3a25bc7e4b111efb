#include "windwall/solve/results/variator_result.hpp"

namespace windwall::solve {

std::span<const fields::Row> VariatorResult::rows() {
    using namespace fields;
    using V = VariatorResult;
    static constexpr Row table[] = {
        result("ratio", "i_v", at<&V::ratio>, number(),
               "Turns of the driving sheave for one of the driven one, where nothing slips"),
        result("slip", "s_v", at<&V::slip>, percent(), "Share of speed lost to slip of its belt"),
        result("efficiency", "eta_v", at<&V::efficiency>, percent(),
               "Share of its power that gets through"),
        result("clamp_force", "F_1", at<&V::clamp_force>, force("N"),
               "Force along the driving sheave that squeezes the belt"),
        result("capacity", "T_c", at<&V::capacity>, torque("N m"),
               "Torque at the driving sheave from which on the belt slips through"),
        result("temperature", "T_b", at<&V::temperature>, fields::temperature("degC"),
               "Temperature of the belt after a long pull there"),
    };
    return table;
}

}  // namespace windwall::solve
