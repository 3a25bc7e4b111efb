#include "windwall/engine/spark.hpp"

#include "windwall/fields/lookup.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace windwall::engine {
namespace {

constexpr fields::Column table_columns[] = {
    {"engine_speed", fields::angular_speed("rpm"), {0, 20000}, "Engine speed, rising"},
    {"retard", fields::angle("deg"), {-20, 40}, "Crank angle after the spark of best torque"},
};

}  // namespace

double SparkPlan::held_retard(double requirement, double fuel_index) const noexcept {
    const double missing = margin - (fuel_index - requirement);
    return std::clamp(missing / octane_per_radian, 0.0, most_retard);
}

double SparkPlan::given_retard(double engine_speed) const noexcept {
    return fields::looked_up(table, engine_speed);
}

Spark SparkPlan::choose(double engine_speed, double requirement, double fuel_index) const noexcept {
    const bool held = policy == SparkPolicy::hold_margin;
    Spark spark;
    spark.retard = held ? held_retard(requirement, fuel_index) : given_retard(engine_speed);
    spark.requirement = requirement - octane_per_radian * spark.retard;
    spark.fuel_index = fuel_index;
    spark.margin = fuel_index - spark.requirement;
    spark.in_range = !held || spark.margin >= margin - 1e-9;
    return spark;
}

std::optional<fields::Violation> SparkPlan::check() const {
    if (policy == SparkPolicy::as_given && table.empty())
        return fields::Violation{"table", "the policy as_given needs a table of retard"};
    if (table.empty()) return std::nullopt;
    const std::vector<double>& speeds = table.column[0];
    if (std::adjacent_find(speeds.begin(), speeds.end(), std::greater_equal<>()) != speeds.end())
        return fields::Violation{"table", "engine speeds must rise from row to row"};
    return std::nullopt;
}

std::span<const fields::Row> SparkPlan::rows() {
    using namespace fields;
    static constexpr Row rows[] = {
        choice("policy", at<&SparkPlan::policy>,
               "hold_margin: best torque, retarded until the margin to knock is held; as_given: "
               "the table",
               "hold_margin"),
        with_default("margin", "M_w", at<&SparkPlan::margin>, number(), {-10, 30}, 0,
                     "Octane numbers that hold_margin keeps between the fuel and the requirement",
                     "a choice, inside the band of what is known"),
        with_default("most_retard", "d_m", at<&SparkPlan::most_retard>, angle("deg"), {0, 40}, 0,
                     "Crank angle by which hold_margin retards at most",
                     "a choice; beyond, exhaust and head run hot"),
        fields::table("table", at<&SparkPlan::table>, table_columns,
                      "Retard over engine speed for as_given, linear in between, its ends held"),
    };
    return rows;
}

}  // namespace windwall::engine
