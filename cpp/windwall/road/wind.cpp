#include "windwall/road/wind.hpp"

#include <cmath>

namespace windwall::road {

double air_speed(double speed, double wind, double angle) noexcept {
    return std::hypot(speed + wind * std::cos(angle), wind * std::sin(angle));
}

double yaw_angle(double speed, double wind, double angle) noexcept {
    return std::atan2(wind * std::sin(angle), speed + wind * std::cos(angle));
}

}  // namespace windwall::road
