#include "windwall/solve/results/margins.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> Margins::rows() {
    static constexpr Row table[] = {
        fact("blower", at<&Margins::blower>, "The part whose drive is moved, where there is one"),
        result("drive_ratio", "i_b", at<&Margins::drive_ratio>, number(),
               "Drive ratio of that part at which nothing is left"),
        result("boost", "dp_m", at<&Margins::boost>, pressure_difference("kPa"),
               "Pressure in the manifold, to there"),
        result("charge_temperature", "dT_m", at<&Margins::charge_temperature>,
               temperature_difference("K"), "Temperature of the charge at the manifold"),
        result("spark", "da", at<&Margins::spark>, angle("deg"), "Advance of the spark"),
    };
    return table;
}

}  // namespace windwall::solve
