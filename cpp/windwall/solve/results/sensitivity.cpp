#include "windwall/solve/results/sensitivity.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> Sensitivity::rows() {
    static constexpr Row table[] = {
        fact("change", at<&Sensitivity::change>, "What is changed"),
        result("speed", "dv", at<&Sensitivity::speed>, fields::speed("km/h"),
               "What that adds to the speed; none where the changed vehicle has no answer"),
    };
    return table;
}

}  // namespace windwall::solve
