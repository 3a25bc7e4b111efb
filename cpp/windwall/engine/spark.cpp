#include "windwall/engine/spark.hpp"

#include "windwall/fields/lookup.hpp"

#include <algorithm>
#include <numbers>
#include <string>
#include <vector>

namespace windwall::engine {
namespace {

// Beyond `richer_from` lambda falls so with the spark that the next octane number costs the same
// torque by either: slopes of the fuel-air cycle over lambda and of the spark penalty, with 2
// octane numbers per unit of air-fuel ratio.
constexpr double richer_per_radian = 0.017 * 180 / std::numbers::pi;
// A margin kept of half of what the requirement is known to: what builders keep by ear, two to
// three octane numbers where 5 is known.
constexpr double margin_per_spread = 0.5;
constexpr double exhaust_per_radian = 6 * 180 / std::numbers::pi;  // K, about; a scale only

constexpr fields::Column table_columns[] = {
    {"engine_speed", fields::angular_speed("rpm"), {0, 20000}, "Engine speed, rising"},
    {"retard", fields::angle("deg"), {-20, 40}, "Crank angle after the spark of best torque"},
};

}  // namespace

double SparkPlan::wanted_margin(double spread) const noexcept {
    return margin.value_or(margin_per_spread * spread);
}

double SparkPlan::enrichment(double retard, double lambda) const noexcept {
    const double wanted = richer_per_radian * (retard - richer_from);
    return std::clamp(wanted, 0.0, std::max(0.0, lambda - richest));
}

double SparkPlan::given_retard(double engine_speed) const noexcept {
    return stated_retard ? *stated_retard : fields::looked_up(table, engine_speed);
}

double SparkPlan::richest_at(double lambda, bool meters_fuel) const noexcept {
    const double richer = meters_fuel ? std::max(0.0, lambda - richest) : 0;
    return richer_from + richer / richer_per_radian;
}

double SparkPlan::left(double retard, double richest_at,
                       double exhaust_temperature) const noexcept {
    const double cooler = (hottest_exhaust - exhaust_temperature) / exhaust_per_radian;
    return std::min(most_retard - retard, std::max(cooler, richest_at - retard));
}

Spark Spark::later(double by) const noexcept {
    Spark there = *this;
    there.retard += by;
    there.requirement -= octane_per_radian * by;
    there.margin = fuel_index - there.requirement;
    return there;
}

Spark SparkPlan::choose(double engine_speed, const Spark& best) const noexcept {
    if (policy == SparkPolicy::as_given) return best.later(given_retard(engine_speed));
    const double missing = -spare(best) / octane_per_radian;
    Spark spark = best.later(std::clamp(missing, 0.0, most_retard));
    spark.by_spark = missing <= std::min(richer_from, most_retard);
    return spark;
}

std::optional<fields::Violation> SparkPlan::check() const {
    if (policy == SparkPolicy::as_given && !stated_retard && table.empty())
        return fields::Violation{"table", "the policy as_given needs the retard, or a table of it"};
    if (stated_retard && !table.empty())
        return fields::Violation{"retard", "one retard is stated, and a table of it beside it"};
    if (!table.empty() && !fields::rises(table))
        return fields::Violation{"table", "engine speeds must rise from row to row"};
    return std::nullopt;
}

std::span<const fields::Row> SparkPlan::rows() {
    using namespace fields;
    static constexpr Row rows[] = {
        choice("policy", at<&SparkPlan::policy>,
               "hold_margin: best torque, retarded until the margin to knock is held; as_given: "
               "what retard or table say",
               "hold_margin, chosen by the project"),
        optional("margin", "M_w", at<&SparkPlan::margin>, number(), {-10, 30},
                 "Octane numbers that hold_margin keeps between the fuel and the requirement; "
                 "where not stated, half of what the requirement is known to"),
        with_default("most_retard", "d_m", at<&SparkPlan::most_retard>, angle("deg"), {0, 40}, 0,
                     "Crank angle by which hold_margin retards at most",
                     "chosen by the project: as far as torque over spark is known"),
        with_default("richest", "l_r", at<&SparkPlan::richest>, number(), {0.65, 1.4}, 0.03,
                     "Lambda to which hold_margin enriches at most, once a late spark alone costs "
                     "more; a carburettor cannot",
                     "enrichment helped up to some 60 % of excess fuel in published tests of "
                     "supercharged engines; a choice on the near side of it"),
        with_default("hottest_exhaust", "T_xm", at<&SparkPlan::hottest_exhaust>,
                     temperature("degC"), {600, 1100}, 30,
                     "Exhaust temperature up to which hold_margin retards",
                     "950 to 1000 degC is held in makers' descriptions of turbocharged engines"),
        optional("retard", "d", at<&SparkPlan::stated_retard>, angle("deg"), {-20, 40},
                 "Crank angle after the spark of best torque at every engine speed, for as_given"),
        fields::table("table", at<&SparkPlan::table>, table_columns,
                      "Retard over engine speed for as_given, linear in between, its ends held"),
        with_default("idle_retard", "d_i", at<&SparkPlan::idle_retard>, angle("deg"), {-10, 40}, 8,
                     "Crank angle after the spark of best torque at which the engine idles",
                     "no source; engines idle well away from best torque, 5 to 15 degrees before "
                     "top dead centre where 30 to 40 would be best with so much residual"),
    };
    return rows;
}

}  // namespace windwall::engine
