#include "windwall/solve/answer/sensitivity.hpp"

#include "windwall/solve/full_throttle/top_speed.hpp"

namespace windwall::solve {
namespace {

using vehicle::Vehicle;
using vehicle::WhatIf;

/// Makes the overall ratio of every gear longer or shorter, wherever the driveline allows it.
void scale_ratio(Vehicle& vehicle, double factor) {
    for (auto& entry : vehicle.driveline) {
        if (auto* gearbox = entry.part.as<driveline::Gearbox>()) {
            for (double& ratio : gearbox->ratios)
                ratio *= factor;
            return;
        }
        if (auto* final_drive = entry.part.as<driveline::FinalDrive>()) {
            final_drive->fixed_ratio *= factor;
            return;
        }
    }
}

void octane(Vehicle& vehicle, double more) {
    vehicle.fuel.research_octane += more;
    vehicle.fuel.motor_octane += more;
}

void make(Change change, Vehicle& car, WhatIf& what_if) {
    switch (change) {
        case Change::power_up: what_if.torque_factor = 1.01; break;
        case Change::drag_area_down: car.body.drag_area *= 0.99; break;
        case Change::mass_down: car.body.mass *= 0.99; break;
        case Change::charge_cooler: what_if.charge_temperature = -10; break;
        case Change::octane_up: octane(car, 1); break;
        case Change::gearing_shorter: scale_ratio(car, 1.01); break;
        case Change::gearing_longer: scale_ratio(car, 0.99); break;
    }
}

Sensitivity to(Change change, Vehicle vehicle, double speed) {
    WhatIf what_if;
    make(change, vehicle, what_if);
    const TopSpeed now = top_speed(vehicle, what_if);
    if (!now.outcome.answered()) return {change, std::nullopt};
    return {change, now.speed() - speed};
}

}  // namespace

std::vector<Sensitivity> sensitivities(const Vehicle& vehicle, double speed) {
    std::vector<Sensitivity> found;
    for (std::size_t change = 0; change < fields::Names<Change>::names.size(); ++change)
        found.push_back(to(static_cast<Change>(change), vehicle, speed));
    return found;
}

}  // namespace windwall::solve
