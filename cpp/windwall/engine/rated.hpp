#pragma once
#include "windwall/fields/row.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::engine {

/// Whether an engine was rated as it is sold, or bare: without silencer and what its crank drives.
enum class RatedAs { net, gross };

/// What its maker printed of the stock engine, before any change.
struct Rated {
    static constexpr std::string_view description =
        "What its maker printed of the stock engine, before any change. The stock engine is solved "
        "so that it meets these figures, in what is not stated of its breathing, rubbing and "
        "exhaust; the same values then serve the changed engine.";

    std::optional<double> torque;        // N m
    std::optional<double> torque_speed;  // rad/s
    std::optional<double> power;         // W
    std::optional<double> power_speed;   // rad/s
    RatedAs as = RatedAs::net;
    double temperature = 298.15;  // K, of the day it is corrected to
    double pressure = 99e3;       // Pa absolute
    double intake_drop = 2e3;     // Pa, at the speed of full power
    double compression_ratio{};
    std::optional<double> research_octane;  // of the fuel that its maker asks for
    std::optional<double> motor_octane;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

}  // namespace windwall::engine

template <>
struct windwall::fields::Names<windwall::engine::RatedAs> {
    static constexpr std::array<std::string_view, 2> names{"net", "gross"};
};
