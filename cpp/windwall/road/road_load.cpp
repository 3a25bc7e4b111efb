#include "windwall/road/road_load.hpp"

#include "windwall/media/constants.hpp"

#include <cmath>

namespace windwall::road {

namespace {

using media::constants::gravity;

// Below this the sign of the speed is rounded, so that standstill has no jump; m/s.
constexpr double crawl = 0.1;

// Rise over run turned into the share of the weight along and across the road. Most roads are
// level, and the load is asked a thousand times on the way to a top speed.
struct Slope {
    double cosine, sine;
    explicit Slope(double grade) noexcept
        : cosine(grade == 0 ? 1 : 1 / std::sqrt(1 + grade * grade)), sine(grade * cosine) {}

    double along(double mass) const noexcept { return mass * gravity * sine; }
    double across(double mass) const noexcept { return mass * gravity * cosine; }
};

double sense(double speed) noexcept {
    return std::abs(speed) < 20 * crawl ? std::tanh(speed / crawl) : std::copysign(1.0, speed);
}

}  // namespace

double air_drag(double drag_area, double density, double air_speed) noexcept {
    return 0.5 * density * drag_area * air_speed * std::abs(air_speed);
}

double rolling_force(double coefficient, double mass, double grade, double speed) noexcept {
    return coefficient * Slope(grade).across(mass) * sense(speed);
}

double grade_force(double mass, double grade) noexcept { return Slope(grade).along(mass); }

RoadLoad road_load(const Body& body, double speed, double density, double headwind,
                   double grade) noexcept {
    const Slope slope(grade);
    return {air_drag(body.drag_area, density, speed + headwind),
            body.rolling_coefficient(speed) * slope.across(body.mass) * sense(speed),
            slope.along(body.mass)};
}

Resistance still_air_resistance(const Body& body, double density, double grade) noexcept {
    const Slope slope(grade);
    const double across = slope.across(body.mass);
    const double rise = body.rolling_resistance * body.rolling_rise / (rise_speed * rise_speed);
    return {body.rolling_resistance * across + slope.along(body.mass),
            0.5 * density * body.drag_area + rise * across};
}

double road_load_polynomial(double speed, double constant, double linear, double square) noexcept {
    return constant + speed * (linear + speed * square);
}

}  // namespace windwall::road
