#include "windwall/vehicle/balance/loop.hpp"

#include <cmath>

namespace windwall::vehicle {
namespace {

constexpr double rounding = 1e-2;  // of the square, below which the ratio goes like it
constexpr double most_forward = 0.95;

/// Ratio from its square, rounded where the root would be upright, and back.
double root_of(double square) { return square / std::sqrt(square + rounding); }
double square_of(double ratio) {
    const double square = ratio * ratio;
    return (square + std::sqrt(square * (square + 4 * rounding))) / 2;
}

}  // namespace

void Loop::declare(Unknowns& unknowns, std::string_view owner) noexcept {
    flow = unknowns.declare({owner, "flow that returns"});
    heat = unknowns.declare({owner, "heat that returns"});
    if (!wet) return;
    for (std::size_t& each : share)
        each = unknowns.declare({owner, "liquid that returns"});
    fed = unknowns.declare({owner, "heat of the liquid that returns"});
}

double recirculation(double unknown) noexcept {
    const double ratio = root_of(rounding * std::sinh(std::abs(unknown)));
    return unknown >= 0 ? ratio : -ratio / (1 + ratio);
}

double recirculation_unknown(double ratio) noexcept {
    if (ratio >= 0) return std::asinh(square_of(ratio) / rounding);
    const double forward = -ratio;
    const double steep = 1 / ((1 - most_forward) * (1 - most_forward));
    const double over = forward < most_forward
                            ? forward / (1 - forward)
                            : most_forward / (1 - most_forward) + steep * (forward - most_forward);
    return -std::asinh(square_of(over) / rounding);
}

}  // namespace windwall::vehicle
