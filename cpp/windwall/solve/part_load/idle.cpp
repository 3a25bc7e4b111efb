#include "windwall/solve/part_load/idle.hpp"

namespace windwall::solve {

double idle_speed(const vehicle::Vehicle& vehicle) noexcept {
    return vehicle.engine.visit([](const auto& engine) { return engine.idle_speed; });
}

vehicle::IdleSetting idle_setting(const vehicle::Vehicle& vehicle) noexcept {
    vehicle::IdleSetting setting;
    setting.retard =
        vehicle.engine.visit([](const auto& engine) { return engine.spark.idle_retard; });
    for (const auto& entry : vehicle.charge_path)
        if (const auto* carburettor = entry.part.as<charge::Carburettor>())
            setting.fuel_share = 1 + carburettor->idle_richer;
    return setting;
}

Point idle(HeldTorque& held, const vehicle::Vehicle& vehicle, double engine_speed,
           double road_speed) {
    return held.at({engine_speed, road_speed, 0}, 0, idle_setting(vehicle));
}

}  // namespace windwall::solve
