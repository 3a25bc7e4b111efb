#pragma once

namespace windwall::vehicle {

/// Where the engine is held: one operating point is asked for by these three numbers.
struct OperatingCondition {
    double engine_speed{};  // rad/s
    double road_speed = 0;  // m/s over the ground; it moves the cooling air
    double opening = 1;     // share of the throttle plate's travel
};

/// Small changes asked of an otherwise unchanged vehicle, to see what each is worth.
struct WhatIf {
    double torque_factor = 1;       // on the torque at the flywheel
    double charge_temperature = 0;  // K added at the manifold
};

}  // namespace windwall::vehicle
