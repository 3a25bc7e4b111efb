#include "windwall/road/traction.hpp"

#include <algorithm>
#include <limits>

namespace windwall::road {

namespace {

double rear_limit(double weight, double grip, double share, double height) noexcept {
    const double held = 1 - grip * height;
    const double gripped =
        held > 0 ? weight * grip * share / held : std::numeric_limits<double>::infinity();
    const double lifted =
        height > 0 ? weight * (1 - share) / height : std::numeric_limits<double>::infinity();
    return std::min(gripped, lifted);
}

}  // namespace

double traction_limit(double weight, double grip, double driven_share, double height,
                      DrivenAxle axle) noexcept {
    switch (axle) {
        case DrivenAxle::rear: return rear_limit(weight, grip, driven_share, height);
        case DrivenAxle::front: return weight * grip * driven_share / (1 + grip * height);
        case DrivenAxle::all: break;
    }
    return weight * grip;
}

double driven_load(double weight, double thrust, double driven_share, double height,
                   DrivenAxle axle) noexcept {
    if (axle == DrivenAxle::all) return weight;
    const double shift = axle == DrivenAxle::rear ? thrust * height : -thrust * height;
    return std::clamp(weight * driven_share + shift, 0.0, weight);
}

double tyre_slip(double thrust, double load, double stiffness) noexcept {
    constexpr double most = 0.5;
    const double full = most * stiffness * std::max(load, 1e-9);
    return most * std::clamp(thrust / full, -1.0, 1.0);
}

}  // namespace windwall::road
