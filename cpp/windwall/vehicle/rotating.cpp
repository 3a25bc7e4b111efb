#include "windwall/vehicle/rotating.hpp"

#include "windwall/driveline/launch.hpp"
#include "windwall/driveline/train.hpp"

#include <algorithm>
#include <numbers>

namespace windwall::vehicle {

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

double accelerated_mass(const Vehicle& vehicle, driveline::GearState gear_state,
                        double rolling_radius, driveline::Behind behind) noexcept {
    const double ratio = driveline::total_ratio(vehicle.driveline, gear_state);
    double at_wheels = driveline::inertia_at_wheels(vehicle.driveline, gear_state, behind);
    if (behind == driveline::Behind::crank) at_wheels += inertia_at_crank(vehicle) * ratio * ratio;
    return vehicle.body.mass + vehicle.body.rotating_mass(rolling_radius) +
           at_wheels / (rolling_radius * rolling_radius);
}

double usual_torque(const Vehicle& vehicle) noexcept {
    const double swept =
        vehicle.engine.visit([](const auto& engine) { return engine.swept_volume(); });
    return 1e6 * swept / (4 * std::numbers::pi);
}

/// Shoes that grip more with speed hold the engine at the start where they carry its torque.
double launch_speed(const Vehicle& vehicle) noexcept {
    const double limit = speed_limit(vehicle);
    const auto held = driveline::launch_speed(vehicle.driveline, usual_torque(vehicle));
    return std::min(held.value_or(0.4 * limit), limit);
}

double speed_limit(const Vehicle& vehicle) noexcept {
    return vehicle.engine.visit([](const auto& engine) { return engine.speed_limit(); });
}

}  // namespace windwall::vehicle
