#include "windwall/road/road_load.hpp"

#include "windwall/media/constants.hpp"

#include <cmath>

namespace windwall::road {

namespace {

using media::constants::gravity;

// Below this the sign of the speed is rounded, so that standstill has no jump; m/s.
constexpr double crawl = 0.1;

// Rise over run turned into the share of the weight along and across the road.
struct Slope {
    double sine, cosine;
    explicit Slope(double grade) noexcept
        : sine(grade / std::sqrt(1 + grade * grade)), cosine(1 / std::sqrt(1 + grade * grade)) {}
};

double sense(double speed) noexcept {
    return std::abs(speed) < 20 * crawl ? std::tanh(speed / crawl) : std::copysign(1.0, speed);
}

}  // namespace

double air_drag(double drag_area, double density, double air_speed) noexcept {
    return 0.5 * density * drag_area * air_speed * std::abs(air_speed);
}

double rolling_force(double coefficient, double mass, double grade, double speed) noexcept {
    return coefficient * mass * gravity * Slope(grade).cosine * sense(speed);
}

double grade_force(double mass, double grade) noexcept {
    return mass * gravity * Slope(grade).sine;
}

RoadLoad road_load(const Body& body, double speed, double density, double headwind,
                   double grade) noexcept {
    const Slope slope(grade);
    const double weight = body.mass * gravity;
    return {air_drag(body.drag_area, density, speed + headwind),
            body.rolling_coefficient(speed) * weight * slope.cosine * sense(speed),
            weight * slope.sine};
}

Resistance still_air_resistance(const Body& body, double density, double grade) noexcept {
    const double across = body.mass * gravity * Slope(grade).cosine;
    const double rise = body.rolling_resistance * body.rolling_rise / (rise_speed * rise_speed);
    return {body.rolling_resistance * across + grade_force(body.mass, grade),
            0.5 * density * body.drag_area + rise * across};
}

double road_load_polynomial(double speed, double constant, double linear, double square) noexcept {
    return constant + speed * (linear + speed * square);
}

}  // namespace windwall::road
