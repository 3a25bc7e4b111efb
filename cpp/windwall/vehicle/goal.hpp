#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>

namespace windwall::vehicle {

/// What the builder is after, and the road it happens on.
struct Goal {
    static constexpr std::string_view description =
        "The speed to reach, and the road to reach it on; or the time of a run from standstill; "
        "and what may be spent on it.";
    std::optional<double> speed;     // m/s
    std::optional<double> run_up;    // m
    std::optional<double> time;      // s, of a driven run over the distance, or to the speed
    std::optional<double> over;      // m
    std::optional<double> to_speed;  // m/s
    std::optional<double> budget;    // in the currency of the file
    double grade = 0;                // rise over run

    std::optional<fields::Violation> check() const {
        if (over && to_speed)
            return fields::Violation{"to_speed",
                                     "a time is over a distance or to a speed, not both"};
        if (time && !over && !to_speed)
            return fields::Violation{"time", "say what it is the time of: state over or to_speed"};
        if (!time && (over || to_speed))
            return fields::Violation{over ? "over" : "to_speed",
                                     "it is what a time is of: state time as well"};
        return std::nullopt;
    }

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            optional("speed", "v_goal", at<&Goal::speed>, fields::speed("km/h"), {5, 600},
                     "Speed the builder wants to reach"),
            optional("run_up", "s", at<&Goal::run_up>, length("m"), {50, 30000},
                     "Length of road from standstill to where the speed is measured"),
            optional("time", "t_goal", at<&Goal::time>, fields::time("s"), {1, 3600},
                     "Time from standstill that the builder wants to need, over a distance or to a "
                     "speed"),
            optional("over", "s_t", at<&Goal::over>, length("m"), {5, 30000},
                     "Distance that it is the time of"),
            optional("to_speed", "v_t", at<&Goal::to_speed>, fields::speed("km/h"), {5, 600},
                     "Speed that it is the time to"),
            optional("budget", "", at<&Goal::budget>, money("EUR"), {0, 1e7},
                     "What may be spent on upgrades, in the currency of their costs; a ranking "
                     "keeps to it unless it is asked with another"),
            with_default("grade", "tan(theta)", at<&Goal::grade>, percent(), {-20, 20}, 0,
                         "Slope of the road, rise over run, uphill positive",
                         "a level road, chosen by the project"),
        };
        return table;
    }
};

}  // namespace windwall::vehicle
