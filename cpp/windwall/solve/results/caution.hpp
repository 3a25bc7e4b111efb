#pragma once
#include <array>
#include <string>
#include <string_view>

namespace windwall::solve {

/// Everything that an answer may warn of. The words are those of results.
enum class Concern {
    compression_ratio,
    mixture,
    inlet_mach_index,
    exhaust_over_intake,
    late_spark,
    knock_pressure,
    measured_speed,
    torque_curve,
    detonation,
    hot_head,
    hot_oil,
    exhaust_heat,
    inlet_depression,
    hot_charge,
    thermal_runaway,
    surge,
    choke,
    condensation,
    coarse_spray,
    siphoning,
    slip,
};

inline constexpr std::array<std::string_view, 21> concern_names{
    "compression_ratio",
    "mixture",
    "inlet_mach_index",
    "exhaust_over_intake",
    "late_spark",
    "knock_pressure",
    "measured_speed",
    "torque_curve",
    "detonation",
    "hot_head",
    "hot_oil",
    "exhaust_heat",
    "inlet_depression",
    "hot_charge",
    "thermal_runaway",
    "surge",
    "choke",
    "condensation",
    "coarse_spray",
    "siphoning",
    "slip",
};
static_assert(concern_names.size() == static_cast<std::size_t>(Concern::slip) + 1);

constexpr std::string_view name(Concern concern) noexcept {
    return concern_names[static_cast<std::size_t>(concern)];
}

/// Something the builder should know about an answer, and where.
struct Caution {
    Concern about;
    std::string address;
    std::string sentence;
};

}  // namespace windwall::solve
