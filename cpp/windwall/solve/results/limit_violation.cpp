#include "windwall/solve/results/limit_violation.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> LimitViolation::rows() {
    using V = LimitViolation;
    static constexpr Row table[] = {
        fact("address", at<&V::address>, "The result that is limited"),
        fact("max", at<&V::max>, "The most it may be, in its SI unit"),
        fact("min", at<&V::min>, "The least it may be, in its SI unit"),
        fact("why", at<&V::why>, "What happens beyond the limit"),
        fact("first", at<&V::first>, "Its value where it first passes the limit"),
        fact("worst", at<&V::worst>, "Its value farthest beyond the limit"),
        result("road_speed", "v", at<&V::road_speed>, speed("km/h"),
               "Speed over the ground where it first passes the limit"),
        result("engine_speed", "N", at<&V::engine_speed>, angular_speed("rpm"),
               "Engine speed where it first passes the limit"),
        fact("gear", at<&V::gear>, "Gear in use there, counted from 1"),
    };
    return table;
}

}  // namespace windwall::solve
