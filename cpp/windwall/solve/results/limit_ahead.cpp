#include "windwall/solve/results/limit_ahead.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> LimitAhead::rows() {
    using L = LimitAhead;
    static constexpr Row table[] = {
        fact("address", at<&L::address>, "The result that is limited"),
        fact("max", at<&L::max>, "The most it may be, in its SI unit"),
        fact("min", at<&L::min>, "The least it may be, in its SI unit"),
        fact("why", at<&L::why>, "What happens beyond the limit"),
        fact("value", at<&L::value>, "What it is at the balance speed"),
        result("share", "x", at<&L::share>, percent(),
               "How much faster the vehicle would be at the limit, over the balance speed"),
        result("speed", "dv", at<&L::speed>, fields::speed("km/h"),
               "How much faster the vehicle would be at the limit"),
    };
    return table;
}

}  // namespace windwall::solve
