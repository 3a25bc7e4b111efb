#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>

namespace windwall::vehicle {

/// What the builder is after, and the road it happens on.
struct Goal {
    static constexpr std::string_view description =
        "The speed to reach, and the road to reach it on.";
    std::optional<double> speed;   // m/s
    std::optional<double> run_up;  // m
    double grade = 0;              // rise over run

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            optional("speed", "v_goal", at<&Goal::speed>, fields::speed("km/h"), {5, 600},
                     "Speed the builder wants to reach"),
            optional("run_up", "s", at<&Goal::run_up>, length("m"), {50, 30000},
                     "Length of road from standstill to where the speed is measured"),
            with_default("grade", "tan(theta)", at<&Goal::grade>, percent(), {-20, 20}, 0,
                         "Slope of the road, rise over run, uphill positive",
                         "a level road, chosen by the project"),
        };
        return table;
    }
};

}  // namespace windwall::vehicle
