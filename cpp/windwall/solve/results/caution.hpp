#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>

namespace windwall::solve {

/// Everything that an answer may warn of.
enum class CautionKind {
    compression_ratio,
    mixture,
    inlet_mach_index,
    exhaust_over_intake,
    late_spark,
    knock_pressure,
    measured_speed,
    overspeed,
    much_water,
    wet_plug,
    torque_curve,
    detonation,
    hot_head,
    hot_oil,
    exhaust_heat,
    late_heat,
    inlet_depression,
    hot_charge,
    thermal_runaway,
    surge,
    choke,
    condensation,
    coarse_spray,
    siphoning,
    uneven_spray,
    idle_pump,
    untriggered_pump,
    throttled_spray,
    drowned,
    leak,
    false_air,
    two_balances,
    slip,
    short_travel,
    unshifted,
    early_grip,
};

/// Something the builder should know about an answer, and where; with the numbers it takes to say
/// so, in the SI unit of what is warned of.
struct Caution {
    static constexpr std::string_view description = "Something to know about an answer.";
    CautionKind about{};
    std::string address;
    std::optional<double> found{};
    std::optional<double> low{};  // what it should not be below, or above
    std::optional<double> high{};
    std::optional<double> engine_speed{};  // where it is found

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::solve

template <>
struct windwall::fields::Names<windwall::solve::CautionKind> {
    static constexpr std::array<std::string_view, 36> names{
        "compression_ratio",
        "mixture",
        "inlet_mach_index",
        "exhaust_over_intake",
        "late_spark",
        "knock_pressure",
        "measured_speed",
        "overspeed",
        "much_water",
        "wet_plug",
        "torque_curve",
        "detonation",
        "hot_head",
        "hot_oil",
        "exhaust_heat",
        "late_heat",
        "inlet_depression",
        "hot_charge",
        "thermal_runaway",
        "surge",
        "choke",
        "condensation",
        "coarse_spray",
        "siphoning",
        "uneven_spray",
        "idle_pump",
        "untriggered_pump",
        "throttled_spray",
        "drowned",
        "leak",
        "false_air",
        "two_balances",
        "slip",
        "short_travel",
        "unshifted",
        "early_grip",
    };
    static_assert(names.size() ==
                  static_cast<std::size_t>(windwall::solve::CautionKind::early_grip) + 1);
};
