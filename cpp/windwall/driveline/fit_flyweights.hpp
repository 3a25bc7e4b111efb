#pragma once
#include "windwall/driveline/belt_cvt.hpp"

#include <optional>

namespace windwall::driveline {

/// Speeds that a belt drive is to hold, rad/s of its driving sheave, and the torque that arrives
/// there at each of them, N m.
struct WantedShift {
    double begin_speed{};
    double begin_torque{};
    std::optional<double> end_speed;  // once it has shifted
    double end_torque{};
    std::optional<double> engagement_speed;
};

/// Weights and spring that hold them, on the ramp there is.
struct FittedFlyweights {
    double weight_mass{};     // kg each
    double spring_preload{};  // N; that of before where no engagement is wanted
    double spring_rate{};     // N/m; that of before where no end is wanted; below 0 no spring is
    double ramp_closed{};     // with the spring rate of before: the ramp at the end of the shift
};

/// The balance of forces turned round: begin, end and engagement are linear in mass, preload and
/// rate. The drive states its weights, springs and cam; it engages below where it begins to shift.
FittedFlyweights fit_flyweights(const BeltCvt& part, const WantedShift& wanted) noexcept;

}  // namespace windwall::driveline
