#include "windwall/bindings/solve_question.hpp"

namespace windwall::bindings {

std::span<const fields::Row> Question::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("engine_speed", "N", at<&Question::engine_speed>, angular_speed("rpm"),
                 {100, 20000}, "Engine speed"),
        with_default("opening", "o", at<&Question::opening>, percent(), {0, 100}, 0,
                     "Share of the throttle plate's travel", "full throttle"),
        with_default("road_speed", "v", at<&Question::road_speed>, speed("km/h"), {0, 600}, 0,
                     "Speed over the ground, which moves the cooling air", "standing still"),
    };
    return table;
}

}  // namespace windwall::bindings
