#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Octane numbers that a radian of retard is worth: Russ, SAE 960497, one per degree.
inline constexpr double octane_per_radian = 180 / std::numbers::pi;

enum class SparkPolicy { hold_margin, as_given };

/// What the spark is set to, and what that leaves to knock. Octane numbers; the margin is the
/// middle of a band of 5 where the engine is anchored and 10 where it is not.
struct Spark {
    double retard{};       // rad after the spark of best torque
    double margin{};       // fuel index less requirement
    double requirement{};  // at this retard
    double fuel_index{};
    double spread{};       // of the margin, one standard deviation
    bool modelled = true;  // false: the engine says nothing of knock
    bool in_range = true;  // false: even the most retard leaves less than the wanted margin
};

/// How the spark is chosen.
struct SparkPlan {
    static constexpr std::string_view description = "How the spark is chosen.";

    SparkPolicy policy = SparkPolicy::hold_margin;
    double margin = 2;                                 // octane numbers
    double most_retard = 25 * std::numbers::pi / 180;  // rad
    fields::Columns table;                             // engine speed in rad/s, retard in rad

    /// `requirement` at the spark of best torque falls by one octane number per degree of retard.
    Spark choose(double engine_speed, double requirement, double fuel_index) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;

private:
    double held_retard(double requirement, double fuel_index) const noexcept;
    double given_retard(double engine_speed) const noexcept;
};

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::SparkPolicy> {
    static constexpr std::array<std::string_view, 2> names{"hold_margin", "as_given"};
};
