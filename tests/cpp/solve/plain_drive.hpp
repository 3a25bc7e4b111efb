#pragma once
#include "windwall/media/constants.hpp"
#include "windwall/solve/drive/drive.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string_view>
#include <utility>
#include <vector>

#include "samples.hpp"

/// A car that nearly nothing is lost in, what it drives, and what is read of that.
namespace windwall::solve::plain {

using sample::rpm;
using vehicle::Outing;

constexpr double torque = 25, radius = 0.27, efficiency = 0.85, mass = 300, inertia = 0.015;
constexpr double rolling = 0.015, drag_area = 0.45;
constexpr double launch = 2500 * rpm, shift = 8000 * rpm, shift_time = 0.4;
constexpr std::array ratios{14.0, 9.0, 6.5, 5.2};

/// The same torque at every engine speed and nothing that is lost but in one place.
inline vehicle::Vehicle plain_car() {
    engine::TorqueCurve engine;
    engine.table.column = {{500 * rpm, 20000 * rpm}, {torque, torque}};
    engine.displacement = 400e-6;
    engine.stroke = 0.06;
    engine.rev_limit = 9000 * rpm;
    engine.inertia = inertia;
    engine.pressure = 99e3;
    engine.temperature = 298.15;
    vehicle::Vehicle car;
    car.day.pressure = engine.pressure;
    car.day.temperature = engine.temperature;
    car.day.relative_humidity = 0;
    car.engine = engine::Engine(engine);
    car.body.mass = mass;
    car.body.drag_area = drag_area;
    car.body.rolling_resistance = rolling;
    car.body.rolling_rise = 0;
    car.body.wheel_inertia = 0;
    car.tyres.measured_radius = radius;
    car.tyres.slip_stiffness = 1e15;
    car.tyres.grip = 1000;
    driveline::Clutch clutch;
    clutch.inertia = 0;
    clutch.launch_speed = launch;
    driveline::Gearbox box;
    box.ratios = {ratios.begin(), ratios.end()};
    box.efficiency = efficiency;
    box.drag_torque = box.churning_torque = box.inertia = 0;
    box.shift_time = shift_time;
    car.driveline = {{"clutch", clutch}, {"gearbox", box}};
    return car;
}

inline double air_density(const vehicle::Vehicle& car) {
    return car.day.pressure.value() / (media::constants::gas_constant_air * car.day.temperature);
}

inline Outing outing(std::vector<vehicle::Leg> legs) {
    Outing made;
    made.id = "run";
    made.legs = std::move(legs);
    made.shift_speed = shift;
    made.launch_gear = 1;
    return made;
}

inline vehicle::FullThrottle for_distance(double metres) {
    vehicle::FullThrottle leg;
    leg.for_distance = metres;
    return leg;
}

inline const DriveEvent& event(const DriveResult& drive, Happening what, int which = 0) {
    for (const DriveEvent& each : drive.events)
        if (each.what == what && which-- == 0) return each;
    throw std::runtime_error("no such event");
}

inline double last(const DriveResult& drive, std::string_view address) {
    const auto at = std::ranges::find(drive.addresses, address) - drive.addresses.begin();
    return drive.columns.at(static_cast<std::size_t>(at)).back();
}

inline DriveOptions tight() {
    DriveOptions options;
    options.tolerance = 1e-9;
    return options;
}

}  // namespace windwall::solve::plain
