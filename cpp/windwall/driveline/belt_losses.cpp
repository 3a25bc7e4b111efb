#include "windwall/driveline/belt_losses.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::driveline {

Losses BeltLosses::at(double ratio) const noexcept {
    const double passed = 1 - load_loss - ratio_loss * std::abs(std::log(ratio));
    return {passed, drag_torque / passed, churning / passed};
}

double BeltLosses::driven_torque(double torque, double ratio) const noexcept {
    const Losses losses = at(ratio);
    return std::max(0.0, (torque - losses.drag_torque) * losses.efficiency * ratio);
}

double BeltLosses::driving_torque(double driven, double ratio) const noexcept {
    const Losses losses = at(ratio);
    return losses.drag_torque + driven / (losses.efficiency * ratio);
}

}  // namespace windwall::driveline
