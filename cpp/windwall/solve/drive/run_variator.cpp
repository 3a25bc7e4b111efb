// Where a belt drive of variable ratio stands as the vehicle comes from one mode to another.
#include "windwall/driveline/train.hpp"
#include "windwall/solve/drive/run.hpp"

namespace windwall::solve {

/// As in gear, with a variator free to stand where its engine speed asks for, beyond its ends too.
const Moment& Run::shifting_freely(std::size_t gear, double pedal) {
    return motion_.at({.phase = Phase::driving, .gear = gear, .stretch = 1, .pedal = pedal},
                      place(run_distance()), state_);
}

/// Crank and wheels together; a variator where it comes to stand at this road speed.
Mode Run::in_gear(std::size_t gear, double pedal) {
    Mode mode{.phase = Phase::driving, .gear = gear, .pedal = pedal};
    if (driveline::variator(vehicle_.driveline, gear))
        mode.stretch = stretch_at(shifting_freely(gear, pedal).wanted_position);
    return mode;
}

/// The pedal holds the speed; a variator stands where it would at full throttle.
Mode Run::held_in(std::size_t gear) {
    Mode mode{.phase = Phase::holding, .gear = gear, .holds = speed()};
    if (!driveline::variator(vehicle_.driveline, gear)) return mode;
    mode.stretch = 1;
    mode.shift_torque = shifting_freely(gear, 1).torque;
    return mode;
}

/// A variator that is let go stays where it is.
double Run::position_kept(const Mode& next) {
    const bool rolls = next.phase == Phase::shifting || next.phase == Phase::coasting ||
                       next.phase == Phase::braking;
    if (!rolls) return next.position;
    const bool together = mode_.phase == Phase::driving || mode_.phase == Phase::holding;
    return together && driveline::variator(vehicle_.driveline, mode_.gear)
               ? moment(state_).gear_state.position
               : mode_.position;
}

}  // namespace windwall::solve
