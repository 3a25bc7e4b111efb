#pragma once
#include "windwall/driveline/train.hpp"

#include "dice.hpp"

/// Random but possible parts; the same every time a test runs.
namespace samples {

using namespace windwall;

/// A part of which half is stated that may be left out.
template <class T>
T part(Dice& dice) {
    return drawn<T>(dice, 0.5);
}

/// Anything a crank may do, in overrun too.
inline driveline::Shaft shaft(Dice& dice) { return {dice.between(1, 900), dice.between(-60, 300)}; }

/// A belt drive of a scooter's size.
inline driveline::BeltCvt cvt() {
    driveline::BeltCvt made;
    made.low_ratio = 2.7;
    made.high_ratio = 0.8;
    made.shift_speed = 600;
    made.rated_torque = 30;
    return made;
}

}  // namespace samples
