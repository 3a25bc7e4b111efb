#include "windwall/driveline/sheaves.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {
namespace {

/// Angle by which a straight of the belt leans towards the line of centres.
double lean(double driving, double driven, double distance) noexcept {
    return std::asin(std::clamp((driven - driving) / distance, -1.0, 1.0));
}

}  // namespace

Wraps belt_wraps(double driving, double driven, double distance) noexcept {
    const double twice = 2 * lean(driving, driven, distance);
    return {std::numbers::pi - twice, std::numbers::pi + twice};
}

double belt_length(double driving, double driven, double distance) noexcept {
    const double step = driven - driving;
    const double straight = std::sqrt(std::max(0.0, distance * distance - step * step));
    return 2 * straight + std::numbers::pi * (driving + driven) +
           2 * step * lean(driving, driven, distance);
}

double driven_radius(double driving, double distance, double length) noexcept {
    const auto excess = [&](double driven) {
        return belt_length(driving, driven, distance) - length;
    };
    return numerics::find_root(excess, 0, driving + distance).x;
}

double driving_radius(double ratio, double distance, double length) noexcept {
    // At the largest radius the step between both wheels is the distance between them.
    const double largest = distance / std::max(std::abs(ratio - 1), 1e-3);
    const auto excess = [&](double driving) {
        return belt_length(driving, ratio * driving, distance) - length;
    };
    return numerics::find_root(excess, 0, largest).x;
}

double clamp_torque(double friction, double force, double radius, double half_angle) noexcept {
    return 2 * friction * force * radius / std::cos(half_angle);
}

PitchRadii Sheaves::radii(double ratio) const noexcept {
    const double driving = driving_radius(ratio, centre_distance, belt_length);
    return {driving, ratio * driving};
}

double Sheaves::movement(double radius) const noexcept {
    return 2 * std::tan(groove_angle / 2) * radius;
}

double Sheaves::reached(double low, double high) const noexcept {
    if (!travel) return high;
    const double climbed = radii(low).driving + *travel / movement(1);
    if (climbed >= radii(high).driving) return high;
    return driven_radius(climbed, centre_distance, belt_length) / climbed;
}

bool Sheaves::fits(double ratio) const noexcept {
    const PitchRadii belt = radii(ratio);
    return belt.driving + belt.driven < centre_distance;
}

double Sheaves::capacity(double force, double ratio) const noexcept {
    return clamp_torque(friction, force, radii(ratio).driving, groove_angle / 2);
}

std::optional<fields::Violation> Sheaves::check() const {
    if (belt_length > 2 * centre_distance) return std::nullopt;
    return fields::Violation{"belt_length",
                             "A belt reaches there and back: it is longer than twice the distance "
                             "between the shafts."};
}

std::span<const fields::Row> Sheaves::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("centre_distance", "C", at<&Sheaves::centre_distance>, length("mm"), {100, 600},
                 "Distance between the two shafts"),
        required("belt_length", "L", at<&Sheaves::belt_length>, length("mm"), {500, 2000},
                 "Length of the belt along its pitch line"),
        optional("clamp_force", "F", at<&Sheaves::clamp_force>, force("N"), {50, 20000},
                 "Force that presses the halves of the driving sheave together, where no weights "
                 "are stated that make it"),
        optional("travel", "x_1", at<&Sheaves::travel>, length("mm"), {1, 100},
                 "How far the driving sheave closes until it meets its stop; far enough for both "
                 "ratios where it is not stated"),
        with_default("groove_angle", "2 beta", at<&Sheaves::groove_angle>, angle("deg"), {16, 44},
                     2, "Angle between the two faces of a pulley", "no source"),
        with_default("friction", "mu", at<&Sheaves::friction>, number(), {0.05, 0.9}, 0.1,
                     "Coefficient of friction of the belt on the sheaves",
                     "no source; dry clean rubber on aluminium"),
    };
    return table;
}

}  // namespace windwall::driveline
