#include "windwall/solve/results/run_up.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> RunUp::rows() {
    static constexpr Row table[] = {
        result("speed", "v", at<&RunUp::speed>, fields::speed("km/h"),
               "Speed at the end of the road"),
        result("time", "t", at<&RunUp::time>, fields::time("s"), "Time over the road"),
        fact("gear", at<&RunUp::gear>, "Gear in use at the end of the road, counted from 1"),
        fact("start_gear", at<&RunUp::start_gear>, "Gear the run starts in, counted from 1"),
    };
    return table;
}

}  // namespace windwall::solve
