#include "windwall/solve/results/binding.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> BeltPosition::rows() {
    static constexpr Row table[] = {
        result("ratio", "i", at<&BeltPosition::ratio>, number(), "Ratio of the belt"),
        fact("highest", at<&BeltPosition::highest>, "Whether it shifts no further up"),
        fact("lowest", at<&BeltPosition::lowest>, "Whether it shifts no further down"),
    };
    return table;
}

std::span<const Row> NextBinding::rows() {
    static constexpr Row table[] = {
        fact("binding", at<&NextBinding::binding>, "What would bind next"),
        result("share", "x", at<&NextBinding::share>, percent(),
               "How far away it is; of drag, how much of the thrust it takes already"),
        result("speed", "dv", at<&NextBinding::speed>, fields::speed("km/h"),
               "How much faster the vehicle would be at the rev limit"),
    };
    return table;
}

}  // namespace windwall::solve
