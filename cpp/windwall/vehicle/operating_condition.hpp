#pragma once

namespace windwall::vehicle {

/// Where the engine is held: one operating point is asked for by these three numbers.
struct OperatingCondition {
    double engine_speed{};  // rad/s
    double road_speed = 0;  // m/s over the ground; it moves the cooling air
    double opening = 1;     // share of the throttle plate's travel
};

/// What an engine that idles is set to, in place of the spark that its plan has and of the mixture
/// that its jets meter at load.
struct IdleSetting {
    double retard{};        // rad after the spark of best torque
    double fuel_share = 1;  // of a carburettor's fuel, over that at load
};

/// Small changes asked of an otherwise unchanged vehicle, to see what each is worth.
struct WhatIf {
    double torque_factor = 1;       // on the torque at the flywheel
    double charge_temperature = 0;  // K added at the manifold
};

}  // namespace windwall::vehicle
