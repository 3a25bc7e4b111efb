#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <span>
#include <string_view>

namespace windwall::charge {

/// Pressure loss of a porous medium in its housing, Pa: `drop` at `at_flow` and `at_density`, of
/// which `linear_share` grows with the flow and the rest with its square; both with 1/density.
/// Flow in kg/s, density in kg/m3; odd in the flow.
double filter_pressure_drop(double flow, double density, double drop, double at_flow,
                            double linear_share, double at_density) noexcept;

struct Filter {
    static constexpr std::string_view kind = "filter";
    static constexpr std::string_view description = "Air filter with its housing.";

    double drop{};            // Pa
    double at_flow{};         // kg/s
    double at_density = 1.2;  // kg/m3
    double linear_share = 0.4;

    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::charge
