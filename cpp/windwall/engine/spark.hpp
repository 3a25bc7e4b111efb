#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Spark after which a richer mixture costs less torque for an octane number than a later spark.
inline constexpr double richer_from = 11 * std::numbers::pi / 180;

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
    bool by_spark =
        true;  // false: a later spark alone is not the cheapest way to the wanted margin

    /// What a spark so many rad later leaves: an octane number for each degree.
    Spark later(double by) const noexcept;
    /// What the spark of best torque would leave, all else the same.
    double margin_at_best() const noexcept { return margin - octane_per_radian * retard; }
};

/// How the spark is chosen, and what else holds off knock. Of the means a builder has, each is used
/// where it costs least torque for an octane number: a later spark first; from `richer_from` on a
/// richer mixture with it, as far as `richest`; then a later spark again, to `most_retard` or
/// until the exhaust is as hot as it may be; then less boost, by the throttle.
struct SparkPlan {
    static constexpr std::string_view description =
        "How the spark is chosen, and how far knock is held off by other means.";

    SparkPolicy policy = SparkPolicy::hold_margin;
    std::optional<double> margin;                      // octane numbers; else by what is known
    double most_retard = 40 * std::numbers::pi / 180;  // rad
    double richest = 0.75;                             // lambda
    double hottest_exhaust = 1223.15;                  // K
    std::optional<double> stated_retard;               // rad, at every engine speed
    fields::Columns table;                             // engine speed in rad/s, retard in rad
    double idle_retard = 25 * std::numbers::pi / 180;  // rad

    /// From what the spark of best torque leaves.
    Spark choose(double engine_speed, const Spark& best) const noexcept;
    /// Octane numbers to keep, where the requirement is known to one standard deviation `spread`.
    double wanted_margin(double spread) const noexcept;
    /// Octane numbers that a spark leaves beyond those to keep.
    double spare(const Spark& spark) const noexcept {
        return spark.margin - wanted_margin(spark.spread);
    }
    /// Radians by which it may be later than at a retard that makes the exhaust so hot, K; negative
    /// where that is too hot. The exhaust ends the spark only once the mixture is at its richest:
    /// on the way there it cools what the spark heats.
    double left(double retard, double richest_at, double exhaust_temperature) const noexcept;
    /// The retard in rad at which an engine of that lambda is as rich as it will be; the one from
    /// which it would be richer where it meters no fuel of its own.
    double richest_at(double lambda, bool meters_fuel) const noexcept;
    /// What is taken off a lambda at a retard in rad.
    double enrichment(double retard, double lambda) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;

private:
    double given_retard(double engine_speed) const noexcept;
};

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::SparkPolicy> {
    static constexpr std::array<std::string_view, 2> names{"hold_margin", "as_given"};
};
