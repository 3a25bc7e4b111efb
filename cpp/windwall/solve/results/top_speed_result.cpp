#include "windwall/solve/results/top_speed_result.hpp"

namespace windwall::solve {

using namespace fields;

std::span<const Row> TopSpeedResult::rows() {
    using R = TopSpeedResult;
    static constexpr Row table[] = {
        group("ending", at<&R::ending>, "How the question ended"),
        fact("points", at<&R::points>, "Operating points solved"),
        fact("limited_by", at<&R::limited_by>, "What binds, one of a closed list of words"),
        result("speed", "v", at<&R::speed>, fields::speed("km/h"),
               "The balance speed, where full throttle stops accelerating"),
        fact("gear", at<&R::gear>, "Gear in use there, counted from 1"),
        result("engine_speed", "N", at<&R::engine_speed>, angular_speed("rpm"),
               "Engine speed there"),
        result("opening", "o", at<&R::opening>, percent(),
               "Share of the throttle's travel there: below full where knock holds it back"),
        result("surplus", "F - R", at<&R::excess_force>, force("N"),
               "Thrust left over to accelerate there"),
        optional_group("belt", at<&R::belt>, "Where the belt of a variator stands there"),
        optional_group("next", at<&R::next>, "What would bind next"),
        optional_group("unanswered", at<&R::unanswered>,
                       "What has no answer: it ends the climb, or there is none"),
        optional_group("run_up", at<&R::run_up>, "The run over the goal's road"),
        optional_group("point", at<&R::point>, "The operating point there"),
        fact("shaft", at<&R::shaft>, "Power at the crank, then what becomes of it"),
        fact("heat", at<&R::heat>, "Power in the fuel, then where it ends as heat"),
        result("exhaust_temperature", "T_e", at<&R::exhaust_temperature>, temperature("degC"),
               "Temperature of the exhaust behind the valves"),
        optional_group("margins", at<&R::margins>, "Until nothing is left of the knock margin"),
        result("margin_without_spray", "M_d", at<&R::margin_without_spray>, number(),
               "Knock margin there the moment every jet is blocked, spark and fuel as they are"),
        fact("sensitivities", at<&R::sensitivities>, "What small changes add"),
        fact("passed", at<&R::passed>, "Limits passed on the way up or at the balance speed"),
        fact("ahead", at<&R::ahead>, "Limits that it would pass by going faster, nearest first"),
        fact("unrated", at<&R::unrated>, "Results that nobody has rated"),
        fact("cautions", at<&R::cautions>, "What to know about the answer"),
    };
    return table;
}

std::span<const Row> PointResult::rows() {
    using R = PointResult;
    static constexpr Row table[] = {
        group("ending", at<&R::ending>, "How the question ended"),
        result("engine_speed", "N", at<&R::engine_speed>, angular_speed("rpm"),
               "Engine speed it is held at"),
        result("road_speed", "v", at<&R::road_speed>, speed("km/h"),
               "Speed over the ground, which moves the cooling air"),
        result("opening", "o", at<&R::opening>, percent(),
               "Share of the throttle's travel that was asked for"),
        optional_group("point", at<&R::point>, "The operating point"),
        fact("cautions", at<&R::cautions>, "What to know about the answer"),
    };
    return table;
}

}  // namespace windwall::solve
