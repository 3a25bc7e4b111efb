#include "windwall/vehicle/rotating.hpp"

#include "windwall/driveline/train.hpp"

#include <algorithm>

namespace windwall::vehicle {
namespace {

/// Moments of inertia that turn with the crank, referred to its speed, kg m2.
double inertia_at_crank(const Vehicle& vehicle) noexcept {
    double inertia = vehicle.engine.visit([](const auto& engine) { return engine.inertia; });
    for (const auto& entry : vehicle.charge_path) {
        inertia += entry.part.visit([]<class Part>(const Part& part) {
            if constexpr (charge::Rotating<Part>) {
                return part.rotor_inertia * part.drive_ratio * part.drive_ratio;
            }
            return 0.0;
        });
    }
    return inertia;
}

/// Of the vehicle, its wheels, and inertias that turn with the wheels.
double mass_with(const Vehicle& vehicle, double at_wheels, double rolling_radius) noexcept {
    return vehicle.body.mass + vehicle.body.rotating_mass(rolling_radius) +
           at_wheels / (rolling_radius * rolling_radius);
}

}  // namespace

double accelerated_mass(const Vehicle& vehicle, driveline::Stance stance,
                        double rolling_radius) noexcept {
    const double ratio = driveline::total_ratio(vehicle.driveline, stance);
    return mass_with(vehicle,
                     driveline::inertia_at_wheels(vehicle.driveline, stance) +
                         inertia_at_crank(vehicle) * ratio * ratio,
                     rolling_radius);
}

double accelerated_mass_while_shifting(const Vehicle& vehicle, driveline::Stance stance,
                                       double rolling_radius) noexcept {
    using driveline::Behind;
    return mass_with(vehicle,
                     driveline::inertia_at_wheels(vehicle.driveline, stance, Behind::variator),
                     rolling_radius);
}

double launch_speed(const Vehicle& vehicle) noexcept {
    for (const auto& entry : vehicle.driveline) {
        if (const auto* clutch = entry.part.as<driveline::Clutch>()) {
            return std::min(clutch->launch_speed, speed_limit(vehicle));
        }
    }
    return 0.4 * speed_limit(vehicle);
}

double speed_limit(const Vehicle& vehicle) noexcept {
    return vehicle.engine.visit([](const auto& engine) { return engine.speed_limit(); });
}

}  // namespace windwall::vehicle
