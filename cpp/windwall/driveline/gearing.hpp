#pragma once

namespace windwall::driveline {

/// Road speed, m/s, of wheels of rolling radius `radius` (m) behind an engine turning `ratio` times
/// as fast, `engine_speed` in rad/s; `slip` is the share of the wheels' speed lost at the road.
double road_speed(double engine_speed, double ratio, double radius, double slip) noexcept;

/// Engine speed, rad/s: the same the other way round. Slip below 1.
double engine_speed(double road_speed, double ratio, double radius, double slip) noexcept;

}  // namespace windwall::driveline
