#include "windwall/solve/results/caution.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> Caution::rows() {
    static constexpr Row table[] = {
        fact("about", at<&Caution::about>, "One of a closed list of words"),
        fact("address", at<&Caution::address>, "What is warned of"),
        fact("found", at<&Caution::found>, "Its value where it has one, SI"),
        fact("low", at<&Caution::low>, "What it should not be below, SI"),
        fact("high", at<&Caution::high>, "What it should not be above, SI"),
        result("engine_speed", "N", at<&Caution::engine_speed>, angular_speed("rpm"),
               "Engine speed where it is found, where that matters"),
    };
    return table;
}

}  // namespace windwall::solve
