#pragma once
#include "windwall/fields/row.hpp"

#include <span>
#include <string_view>

namespace windwall::engine {

/// Rubbing of pistons, bearings and valve gear.
struct Friction {
    static constexpr std::string_view description =
        "Rubbing of pistons, bearings and valve gear, warm.";

    double base = 60e3;             // Pa
    double per_piston_speed = 4e3;  // Pa per m/s
    double gas_load = 0.17;         // Pa per Pa of boost
    double scale = 1;

    /// Mean effective pressure in Pa, for a mean piston speed in m/s and a manifold pressure above
    /// the weather in Pa, negative where throttled. `film_share` is the factor on oil films that
    /// are not hot.
    double mean_pressure(double piston_speed, double boost, double film_share = 1) const noexcept;

    static std::span<const fields::Row> rows();
};

}  // namespace windwall::engine
