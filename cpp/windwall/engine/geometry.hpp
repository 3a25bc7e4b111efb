#pragma once
#include <numbers>

namespace windwall::engine {

/// m3 swept by all pistons, from bore and stroke in metres.
constexpr double swept_volume(double bore, double stroke, double cylinders) noexcept {
    return std::numbers::pi / 4 * bore * bore * stroke * cylinders;
}

/// m/s, from the stroke in metres and the engine speed in rad/s: two strokes a turn.
constexpr double mean_piston_speed(double stroke, double engine_speed) noexcept {
    return stroke * engine_speed / std::numbers::pi;
}

/// Volume swept per second by intake strokes, m3/s: a four-stroke fills once in two turns.
constexpr double swept_flow(double swept_volume, double engine_speed) noexcept {
    return swept_volume * engine_speed / (4 * std::numbers::pi);
}

/// Pa: work per cycle over swept volume, from a power in W. Four strokes.
constexpr double mean_effective_pressure(double power, double swept_volume,
                                         double engine_speed) noexcept {
    return power / swept_flow(swept_volume, engine_speed);
}

}  // namespace windwall::engine
