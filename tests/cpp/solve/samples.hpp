#pragma once
#include "windwall/vehicle/vehicle.hpp"

#include <numbers>
#include <vector>

/// Invented vehicles to solve in tests.
namespace windwall::sample {

inline constexpr double rpm = std::numbers::pi / 30;

inline engine::Cylinder twin() {
    engine::Cylinder engine;
    engine.cylinders = 2;
    engine.bore = 0.076;
    engine.stroke = 0.0688;
    engine.compression_ratio = 8;
    engine.rev_limit = 6200 * rpm;
    return engine;
}

inline charge::PositiveBlower roots() {
    charge::PositiveBlower blower;
    blower.displacement = 230e-6;
    blower.drive_ratio = 1.35;
    blower.leak_area = 9e-6;
    return blower;
}

inline charge::Throttle throttle(double bore = 36e-3) {
    charge::Throttle made;
    made.bore = bore;
    return made;
}

inline charge::Filter filter() {
    charge::Filter made;
    made.drop = 600;
    made.at_flow = 25e-3;
    return made;
}

inline charge::ChargeCooler cooler() {
    charge::ChargeCooler made;
    made.conductance = 60;
    made.at_charge_flow = 25e-3;
    made.at_cooling_flow = 250e-3;
    made.drop = 2500;
    made.face_area = 0.03;
    return made;
}

inline vehicle::Driveline four_speed(double final_ratio = 4.0) {
    driveline::Gearbox box;
    box.ratios = {3.2, 2.0, 1.45, 1.1};
    driveline::FinalDrive last;
    last.fixed_ratio = final_ratio;
    return {{"clutch", driveline::Clutch{}}, {"gearbox", box}, {"axle", last}};
}

/// A blown twin without a charge cooler, on a hot day, with a road of 1600 m.
inline vehicle::Vehicle cyclecar() {
    vehicle::Vehicle car;
    car.goal.run_up = 1600;
    car.day.temperature = 306.15;
    car.day.pressure = 98.4e3;
    car.day.relative_humidity = 0.35;
    car.body.mass = 348;
    car.body.drag_area = 0.56;
    car.charge_path = {{"filter", filter()},
                       {"throttle", throttle()},
                       {"blower", roots()},
                       {"plenum", charge::Plenum{}}};
    car.engine = engine::Engine(twin());
    car.driveline = four_speed(3.4);
    car.tyres.measured_radius = 0.28;
    return car;
}

/// The same with a charge cooler behind the blower.
inline vehicle::Vehicle cooled_cyclecar() {
    vehicle::Vehicle car = cyclecar();
    car.charge_path.insert(car.charge_path.begin() + 3, {"cooler", cooler()});
    return car;
}

/// Not boosted, spark at its best whatever knocks, engine far from its limit.
inline vehicle::Vehicle unblown() {
    vehicle::Vehicle car = cyclecar();
    car.charge_path.erase(car.charge_path.begin() + 2);
    auto& engine = *car.engine.as<engine::Cylinder>();
    engine.spark.policy = engine::SparkPolicy::as_given;
    engine.rev_limit = 9000 * rpm;
    car.tyres.grip = 1.5;
    return car;
}

inline driveline::BeltCvt belt() {
    driveline::BeltCvt made;
    made.low_ratio = 2.8;
    made.high_ratio = 0.8;
    made.shift_speed = 4200 * rpm;
    made.rated_torque = 50;
    made.engagement_speed = 2000 * rpm;
    return made;
}

/// Belt drive straight at the crank, and a fixed reduction behind it.
inline vehicle::Vehicle belt_driven(vehicle::Vehicle car = cyclecar(), double reduction = 5) {
    driveline::FinalDrive last;
    last.fixed_ratio = reduction;
    car.driveline = {{"belt", belt()}, {"axle", last}};
    return car;
}

/// Every kind of node at once: a cooled blower with pipe and plenum, and a belt for a gearbox.
inline vehicle::Vehicle with_every_node(engine::CoolingBy by = engine::CoolingBy::fan) {
    vehicle::Vehicle car = belt_driven(cooled_cyclecar());
    charge::Duct pipe;
    pipe.length = 0.6;
    pipe.bore = 0.04;
    car.charge_path.insert(car.charge_path.end() - 1, {"pipe", pipe});
    car.charge_path.back().part.as<charge::Plenum>()->volume = 3e-3;
    car.engine.as<engine::Cylinder>()->cooling.by = by;
    return car;
}

/// With an anchor so many octane numbers higher.
inline vehicle::Vehicle knocking(vehicle::Vehicle car, double octane) {
    car.engine.as<engine::Cylinder>()->knock_anchor.octane_number += octane;
    return car;
}

/// Late spark begins, or the throttle is held back, somewhere along the curve.
inline std::vector<vehicle::Vehicle> knocking_or_not() {
    return {cyclecar(),
            cooled_cyclecar(),
            unblown(),
            knocking(cyclecar(), 6),
            knocking(cooled_cyclecar(), 12),
            knocking(cyclecar(), 22)};
}

}  // namespace windwall::sample
