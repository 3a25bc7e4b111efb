#pragma once
#include "windwall/driveline/shaft.hpp"

#include <optional>

namespace windwall::driveline {

/// Input speed at which a churning torque is stated, rad/s: 5000 rpm.
inline constexpr double churning_speed = 523.598775598298873;

/// What a stage takes from the torque that passes through it.
struct Losses {
    double efficiency = 1;   // share of the torque left after drag that gets through
    double drag_torque = 0;  // N m at the input, whatever the load and speed
    double churning = 0;     // N m at the input at 5000 rpm, in proportion to speed
};

/// Drag at the input of a stage, N m, against the rotation; the sign turns over within a few rad/s
/// of standstill so that a resting shaft is not driven backwards.
double drag(const Losses& losses, double speed) noexcept;

/// The torque that gets through what slips above a capacity, N m; all of it where none is known.
double held_torque(double torque, const std::optional<double>& capacity) noexcept;

/// What a part that slips above a capacity takes of its input. Where it drives that is all of it:
/// what does not get through heats the part. In overrun it is no more than the part holds: the
/// input is dragged along no harder, slows down, and pays the rest out of its own momentum.
Shaft taken(const Shaft& in, const std::optional<double>& capacity) noexcept;

/// An output shaft that lags by a share of its speed; in overrun the input lags.
Shaft lagging(Shaft out, double share) noexcept;

/// The output of a stage whose input turns `ratio` times as fast. Driving:
/// T_out = (T_in - T_drag) ratio efficiency. In overrun the power comes from the output, and the
/// efficiency divides instead: what is lost is never negative.
Shaft transmit(const Shaft& in, double ratio, const Losses& losses) noexcept;

}  // namespace windwall::driveline
