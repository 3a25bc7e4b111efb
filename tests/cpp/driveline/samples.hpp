#pragma once
#include "windwall/driveline/train.hpp"

#include <numbers>
#include <type_traits>

#include "dice.hpp"

/// Random but possible parts; the same every time a test runs.
namespace samples {

using namespace windwall;

inline driveline::BeltCvt any_weighted(Dice& dice);

/// A part of which half is stated that may be left out; every third belt drive has weights.
template <class T>
T part(Dice& dice) {
    if constexpr (std::is_same_v<T, driveline::BeltCvt>)
        if (dice.between(0, 1) < 0.3) return any_weighted(dice);
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

/// The same with weights, springs and cam in place of a shift speed.
inline driveline::BeltCvt weighted() {
    driveline::BeltCvt made = cvt();
    made.shift_speed.reset();
    made.sheaves.emplace();
    made.sheaves->centre_distance = 0.27;
    made.sheaves->belt_length = 0.96179608;
    made.flyweights.emplace();
    made.flyweights->weight_mass = 0.045;
    made.flyweights->weight_radius = 0.045;
    made.flyweights->ramp = 0.6;
    made.flyweights->spring_preload = 250;
    made.flyweights->spring_rate = 20e3;
    made.torque_cam.emplace();
    made.torque_cam->spring_preload = 250;
    made.torque_cam->spring_rate = 10e3;
    made.torque_cam->cam_radius = 0.045;
    made.torque_cam->cam_angle = 40 * std::numbers::pi / 180;
    return made;
}

/// One of them anywhere in the ranges of its rows.
inline driveline::BeltCvt any_weighted(Dice& dice) {
    for (;;) {
        auto made = drawn<driveline::BeltCvt>(dice, 0.5);
        for (auto* stated :
             {&made.shift_speed, &made.shift_end_speed, &made.slip_torque, &made.engagement_speed})
            stated->reset();
        made.sheaves = drawn<driveline::Sheaves>(dice, 0);
        made.flyweights = drawn<driveline::Flyweights>(dice, 0.5);
        made.torque_cam = drawn<driveline::TorqueCam>(dice, 0);
        if (!made.check()) return made;
    }
}

}  // namespace samples
