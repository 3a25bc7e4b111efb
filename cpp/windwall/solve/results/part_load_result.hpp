#pragma once
#include "windwall/solve/results/caution.hpp"
#include "windwall/solve/results/ending.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <optional>
#include <span>
#include <vector>

namespace windwall::solve {

/// The engine held by its pedal at what a road speed asks for, or at an idle.
struct PartLoadResult {
    static constexpr std::string_view description =
        "The pedal that holds a road speed or an idle, and what it costs.";
    Ending ending;
    double engine_speed{};
    double road_speed{};
    std::optional<long> gear;  // from 1; empty of an idle
    double opening{};
    std::optional<double> torque;            // that the pedal holds, or that its nearest end gives
    std::optional<double> petrol;            // kg/s
    std::optional<double> blower_power;      // W; empty without a blower
    std::optional<double> inlet_depression;  // of the blower that has most
    std::optional<double> returned;          // kg/s; empty without a bypass
    std::optional<double> charge_temperature;
    std::optional<double> hotter_charge;  // in another balance at the same pedal
    std::optional<OperatingPoint> point;
    std::vector<Caution> cautions;

    static std::span<const fields::Row> rows();
};

/// From a point described, what is told of it beside.
void sum_up(const OperatingPoint& point, PartLoadResult& into);

}  // namespace windwall::solve
