#pragma once
#include "windwall/fields/row.hpp"

#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// What the octane requirement depends on.
struct KnockState {
    double compression_ratio{};
    double engine_speed{};        // rad/s
    double manifold_pressure{};   // Pa absolute
    double charge_temperature{};  // K, at the manifold
    double head_temperature{};    // K
    double retard{};              // rad after the spark of best torque
    double lambda{};
    double humidity_ratio{};    // kg per kg dry air
    double exhaust_pressure{};  // Pa absolute
};

/// Octane numbers that the requirement at `here` lies above that at `anchor`: a sum of slopes of
/// Russ, SAE 960497, where the manifold pressure counts by its logarithm; -1 per 1000 rpm and water
/// vapour at -0.3 per g/kg, less where there is much. Supported to twice the anchor's pressure.
double octane_requirement_rise(const KnockState& here, const KnockState& anchor) noexcept;

/// One point of this engine at the edge of knock. Without one, a table of old engines stands in.
struct KnockAnchor {
    static constexpr std::string_view description =
        "One point of this engine at the edge of audible knock, with the octane index it needed. "
        "Unless stated, a table of engines of 1960 to 1990 at full throttle stands in, known to "
        "no better than 10 octane numbers.";

    double octane_number = 92;
    double compression_ratio = 8;
    double engine_speed = 250 * std::numbers::pi / 3;  // rad/s
    double manifold_pressure = 100e3;                  // Pa absolute
    double charge_temperature = 298.15;                // K
    double head_temperature = 453.15;                  // K
    double retard = 0;                                 // rad
    double lambda = 0.9586;
    double humidity_ratio = 0.0071;
    double exhaust_pressure = 100e3;  // Pa absolute

    std::optional<double> known_to;  // octane numbers, one standard deviation

    /// One standard deviation of the requirement: what the builder says of the anchor, else 5 for
    /// one that was heard and 10 for the table that stands in.
    double spread() const noexcept;

    /// Octane number needed at another state.
    double requirement(const KnockState& state) const noexcept;

    static std::span<const fields::Row> rows();
};

/// Chance that the requirement lies above the fuel: a margin known to one standard deviation
/// `spread`, normally distributed.
double knock_probability(double margin, double spread) noexcept;

}  // namespace windwall::engine
