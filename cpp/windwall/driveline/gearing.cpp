#include "windwall/driveline/gearing.hpp"

namespace windwall::driveline {

double road_speed(double engine_speed, double ratio, double radius, double slip) noexcept {
    return engine_speed * radius * (1 - slip) / ratio;
}

double engine_speed(double road_speed, double ratio, double radius, double slip) noexcept {
    return road_speed * ratio / (radius * (1 - slip));
}

}  // namespace windwall::driveline
