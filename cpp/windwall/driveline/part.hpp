#pragma once
#include "windwall/driveline/belt.hpp"
#include "windwall/driveline/belt_cvt.hpp"
#include "windwall/driveline/centrifugal_clutch.hpp"
#include "windwall/driveline/chain.hpp"
#include "windwall/driveline/clutch.hpp"
#include "windwall/driveline/final_drive.hpp"
#include "windwall/driveline/gearbox.hpp"
#include "windwall/fields/one_of.hpp"
#include "windwall/media/thermal_node.hpp"

#include <cmath>
#include <concepts>
#include <cstddef>
#include <optional>

namespace windwall::driveline {

/// Has a ratio (input speed over output speed, where nothing slips) in each of its gears, which
/// count from 0, and at each position if it is a variator.
template <class T>
concept Geared = requires(const T& part, GearState gear_state) {
    { part.gears() }
    noexcept->std::same_as<std::size_t>;
    { part.ratio(gear_state) }
    noexcept->std::same_as<double>;
};

/// Turns what its input shaft carries into what its output shaft carries.
template <class T>
concept Driving = requires(const T& part, const Shaft& in, GearState gear_state) {
    { part.drive(in, gear_state) }
    noexcept->std::same_as<Shaft>;
};

/// Has a moment of inertia, kg m2, as felt at its input.
template <class T>
concept Turning = requires(const T& part) {
    { part.inertia } -> std::convertible_to<double>;
};

/// Goes through its ratios without steps, and says between which and at what speed of its input.
template <class T>
concept Varying = requires(const T& part) {
    { part.variator() }
    noexcept->std::same_as<Variator>;
};

/// Has more that turns, kg m2, as felt at its output.
template <class T>
concept TurningBehind = requires(const T& part) {
    { part.driven_inertia } -> std::convertible_to<double>;
};

/// Slips above a torque at its input, N m, that its speed in rad/s and the state of the gears
/// decide; nothing where that is not known.
template <class T>
concept Holding = requires(const T& part, double speed, GearState gear_state) {
    { part.holds(speed, gear_state) }
    noexcept->std::same_as<std::optional<double>>;
};

/// Whether a part is asked for more torque than it holds, whichever way the power goes.
template <Holding Part>
bool slips(const Part& part, const Shaft& in, GearState gear_state) noexcept {
    const std::optional<double> held = part.holds(in.speed, gear_state);
    return held && std::abs(in.torque) > *held;
}

/// May lose speed to slip, a share that the torque decides which it takes of a shaft.
template <class T>
concept Slipping = requires(const T& part, const Shaft& taken, GearState gear_state) {
    { part.slip_share(taken, gear_state) }
    noexcept->std::same_as<double>;
};

/// Takes time to warm up by the watts it loses, between them and air at a temperature in K.
template <class T>
concept Thermal = requires(const T& part, double loss, double air_temperature) {
    requires media::ThermalNodes<decltype(part.thermal_nodes(loss, air_temperature))>;
};

template <class T>
concept DrivelinePart = fields::Kind<T> && Geared<T> && Driving<T> && Turning<T>;

/// Says, one sentence each, what a type lacks to be a part of the driveline.
template <class T>
struct Complete {
    static_assert(fields::Kind<T>,
                  "a driveline part needs `kind`, `says` and `rows()`, and default values");
    static_assert(
        Geared<T>,
        "a driveline part needs size_t gears() and double ratio(gear_state), const noexcept");
    static_assert(Driving<T>, "a driveline part needs Shaft drive(in, gear_state), const noexcept");
    static_assert(Turning<T>, "a driveline part needs a number `inertia`");
    static constexpr bool value = DrivelinePart<T>;
};

/// One part of the driveline. A new one is a header and a word here.
using Part = fields::OneOf<Clutch, CentrifugalClutch, Chain, Belt, Gearbox, FinalDrive, BeltCvt>;

static_assert(fields::of_all<Complete, Part>);

}  // namespace windwall::driveline
