#pragma once
#include "windwall/engine/engine.hpp"

#include <numbers>

namespace windwall::engine {

inline constexpr double rpm = std::numbers::pi / 30;

/// Two-valve single of 499 cm3, ratio 9.
inline Cylinder single_499() {
    Cylinder engine;
    engine.cylinders = 1;
    engine.bore = 0.087;
    engine.stroke = 0.084;
    engine.compression_ratio = 9;
    engine.rev_limit = 7000 * rpm;
    engine.lambda = 1 / 1.15;
    engine.valves.intake_ratio = 0.52;
    engine.valves.exhaust_ratio = 0.44;
    engine.valves.intake_closing = 60 * degree;
    engine.breathing.peak_efficiency = 0.86;
    engine.breathing.best_speed = 5000 * rpm;
    return engine;
}

inline Intake intake_at(double engine_speed, double pressure, double temperature,
                        double ambient_pressure = 99e3, double humidity_ratio = 0) {
    return {engine_speed, media::ambient_stream(pressure, temperature, humidity_ratio, 1e-3),
            ambient_pressure, 298.15};
}

/// The intake of an engine whose head is held at a temperature in K from outside.
inline Intake with_head(Intake intake, double temperature) {
    intake.head_temperature = temperature;
    return intake;
}

/// The intake with the flow that the engine draws from it.
inline Intake settled(const Cylinder& engine, Intake intake, const media::Fuel& fuel) {
    for (int round = 0; round < 60; ++round)
        intake.charge.dry_air =
            engine.gas_demand(intake, fuel) / (1 + intake.charge.vapour_share());
    return intake;
}

/// At the spark of best torque, with the flow that the engine draws.
inline Work best_work(const Cylinder& engine, const Intake& intake, const media::Fuel& fuel = {}) {
    return engine.work(settled(engine, intake, fuel), fuel, 0);
}

}  // namespace windwall::engine
