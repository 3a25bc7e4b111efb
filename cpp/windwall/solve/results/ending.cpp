#include "windwall/solve/results/ending.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> Ending::rows() {
    static constexpr Row table[] = {
        fact("status", at<&Ending::status>, "One of a closed list of words"),
        fact("answered", at<&Ending::answered>, "Whether that is an answer"),
        fact("part", at<&Ending::part>, "The part whose balance is furthest off"),
        result("residual", "r", at<&Ending::residual>, number(),
               "How far off that is, as a share of the part's flow"),
        fact("evaluations", at<&Ending::evaluations>, "How often the balance was evaluated"),
    };
    return table;
}

std::span<const Row> Tried::rows() {
    static constexpr Row table[] = {
        group("ending", at<&Tried::ending>, "How it ended"),
        result("engine_speed", "N", at<&Tried::engine_speed>, angular_speed("rpm"), "Engine speed"),
        result("road_speed", "v", at<&Tried::road_speed>, speed("km/h"),
               "Speed over the ground, which moves the cooling air"),
        result("opening", "o", at<&Tried::opening>, percent(),
               "Share of the throttle's travel: below full where knock holds it back"),
    };
    return table;
}

Ending ending(const Outcome& outcome) {
    return {outcome.status, outcome.answered(), std::string(outcome.worst), outcome.residual,
            outcome.evaluations};
}

Tried tried(const Point& point) {
    return {ending(point.outcome), point.condition.engine_speed, point.condition.road_speed,
            point.condition.opening};
}

}  // namespace windwall::solve
