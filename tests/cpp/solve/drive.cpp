// Drives held against closed forms: what a constant torque does from gear to gear, a clutch that
// slips, a road that slows, metal that cools.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
#include <map>
#include <vector>

#include "plain_drive.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using namespace plain;

/// Under a constant thrust: the speed that is approached, and time and road between two speeds.
struct Piece {
    double thrust{}, mass{}, constant{}, square{};

    double far() const { return std::sqrt((thrust - constant) / square); }
    double time(double from, double to) const {
        const double V = far();
        return mass / (square * V) * (std::atanh(to / V) - std::atanh(from / V));
    }
    double road(double from, double to) const {
        const double V = far();
        return mass / (2 * square) * std::log((V * V - from * from) / (V * V - to * to));
    }
};

/// Without thrust.
struct Coast {
    double mass{}, constant{}, square{};
    double still() const { return std::sqrt(constant / square); }
    double after(double speed, double time) const {
        if (constant == 0) return speed / (1 + square * speed * time / mass);
        const double V = still();
        return V * std::tan(std::atan(speed / V) - time * std::sqrt(constant * square) / mass);
    }
    double road(double from, double to) const {
        return mass / (2 * square) *
               std::log((constant + square * from * from) / (constant + square * to * to));
    }
};

/// Time, road and speed of every event of the run through four gears.
struct Passed {
    Happening what{};
    double time{}, distance{}, road_speed{};
};

std::vector<Passed> worked_run(const vehicle::Vehicle& car) {
    const double a = car.body.rolling_resistance * mass * media::constants::gravity,
                 c = air_density(car) * drag_area / 2;
    std::vector<Passed> passed;
    double t = 0, s = 0, v = 0;
    const auto go = [&](const Piece& piece, double to, Happening what) {
        t += piece.time(v, to);
        s += piece.road(v, to);
        v = to;
        passed.push_back({what, t, s, v});
    };
    for (std::size_t gear = 0; gear < ratios.size(); ++gear) {
        const double thrust = torque * efficiency * ratios[gear] / radius;
        const double heavy = mass + inertia * std::pow(ratios[gear] / radius, 2);
        if (gear == 0)
            go({thrust, mass, a, c}, launch * radius / ratios[0], Happening::clutch_grips);
        const Piece piece{thrust, heavy, a, c};
        if (gear + 1 == ratios.size()) break;
        go(piece, shift * radius / ratios[gear], Happening::shift_begins);
        const Coast between{mass, a, c};
        const double slow = between.after(v, shift_time);
        s += between.road(v, slow);
        t += shift_time;
        v = slow;
        passed.push_back({Happening::shift_ends, t, s, v});
    }
    return passed;
}

}  // namespace

TEST(Drive, FourGearsUnderAConstantTorqueAreTheClosedForms) {
    for (const double share : {0.0, rolling}) {
        vehicle::Vehicle car = plain_car();
        car.body.rolling_resistance = share;
        const DriveResult drive = solve::drive(car, outing({for_distance(600)}), tight());
        ASSERT_EQ(drive.end, DriveEnd::legs_done);
        // Within tenths of a metre per second of standstill rolling resistance only comes to its
        // size, where the closed form has all of it: there the two part, and nowhere else.
        const DriveEvent& start = event(drive, Happening::clutch_grips);
        const Passed worked = worked_run(car).front();
        const double late = share > 0 ? start.time - worked.time : 0;
        const double far = share > 0 ? start.distance - worked.distance : 0;
        EXPECT_LT(std::abs(late), 1e-3);
        std::map<Happening, int> seen;
        for (const Passed& expected : worked_run(car)) {
            const DriveEvent& found = event(drive, expected.what, seen[expected.what]++);
            EXPECT_NEAR(found.time - late, expected.time, 1e-6 * expected.time);
            EXPECT_NEAR(found.distance - far, expected.distance, 1e-6 * expected.distance);
            EXPECT_NEAR(found.road_speed, expected.road_speed, 1e-6 * expected.road_speed);
        }
    }
}

// Of what the engine gives while a clutch slips from standstill, half goes into the vehicle where
// nothing resists it.

TEST(Drive, AClutchTakesAsMuchAsTheVehicleGains) {
    vehicle::Vehicle car = plain_car();
    car.body.rolling_resistance = 0;
    car.body.drag_area = 1e-9;
    car.driveline[1].part.as<driveline::Gearbox>()->efficiency = 1;
    const DriveResult drive = solve::drive(car, outing({vehicle::Launch{}}), tight());
    const double speed = launch * radius / ratios[0];
    const double gained = mass * speed * speed / 2;
    EXPECT_NEAR(drive.energy[static_cast<std::size_t>(Energy::clutch)] / gained, 1, 1e-6);
    EXPECT_NEAR(drive.energy[static_cast<std::size_t>(Energy::crank)] / gained, 2, 1e-6);
}

TEST(Drive, ACoastDownIsTheClosedForm) {
    const vehicle::Vehicle car = plain_car();
    vehicle::FullThrottle up;
    up.to_speed = 30;
    vehicle::Coast down;
    down.for_time = 20;
    const DriveResult drive = solve::drive(car, outing({up, down}), tight());
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const Coast coast{mass, rolling * mass * media::constants::gravity,
                      air_density(car) * drag_area / 2};
    const double slow = coast.after(30, 20);
    EXPECT_NEAR(last(drive, "road/speed"), slow, 1e-6 * slow);
    const double road = last(drive, "distance") - event(drive, Happening::leg_begins, 1).distance;
    EXPECT_NEAR(road, coast.road(30, slow), 1e-6 * road);
}

// A belt drive that holds the engine's speed makes a constant torque a constant power.

TEST(Drive, ABeltDriveWithoutLossIsConstantPower) {
    vehicle::Vehicle car = plain_car();
    car.body.rolling_resistance = 0;
    driveline::BeltCvt belt;
    belt.low_ratio = 4;
    belt.high_ratio = 0.8;
    belt.shift_speed = 6000 * rpm;
    belt.rated_torque = 50;
    belt.drag_share = belt.load_loss = belt.ratio_loss = belt.slip = 0;
    belt.inertia = belt.driven_inertia = 0;
    driveline::FinalDrive last_drive;
    last_drive.fixed_ratio = 4;
    last_drive.efficiency = 1;
    last_drive.drag_torque = last_drive.inertia = 0;
    car.driveline = {car.driveline.front(), {"belt", belt}, {"axle", last_drive}};
    vehicle::FullThrottle up;
    up.to_speed = 35;
    DriveOptions options = tight();
    options.mark_speeds = {15, 30};
    const DriveResult drive = solve::drive(car, outing({up}), options);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const double power = torque * belt.shift_speed.value(), c = air_density(car) * drag_area / 2;
    const double far = std::cbrt(power / c), heavy = mass;
    const auto road = [&](double v) {
        return -heavy / (3 * c) * std::log1p(-std::pow(v / far, 3));
    };
    const auto time = [&](double v) {
        const double x = v / far, root = std::sqrt(3.0);
        return heavy / (c * far) *
               (-std::log(1 - x) / 3 + std::log(1 + x + x * x) / 6 -
                (std::atan((2 * x + 1) / root) - std::atan(1 / root)) / root);
    };
    const Mark &slow = drive.marks.at(0), &fast = drive.marks.at(1);
    EXPECT_GT(slow.time, event(drive, Happening::ratio_begins).time);
    EXPECT_NEAR((fast.time - slow.time) / (time(30) - time(15)), 1, 1e-6);
    EXPECT_NEAR((fast.distance - slow.distance) / (road(30) - road(15)), 1, 1e-6);
}

// With the engine off what is left of a block's warmth falls by the same share in the same time.

// A head that stands gives its heat to the air under the bodywork, which is the day's where nothing
// warms it.
TEST(Drive, MetalCoolsByAnExponential) {
    vehicle::Vehicle car = sample::cyclecar();
    car.engine_bay.rise = 0;
    vehicle::Stop stop;
    stop.time = 600;
    stop.engine = vehicle::StandingEngine::off;
    Outing rest = outing({stop});
    rest.starts = vehicle::Starts::soaked;
    DriveOptions options = tight();
    options.every_standing = 100;
    const DriveResult drive = solve::drive(car, rest, options);
    const auto at = std::ranges::find(drive.addresses, "engine/head/temperature");
    const auto& T = drive.columns[static_cast<std::size_t>(at - drive.addresses.begin())];
    const auto& t = drive.columns[0];
    const double air = car.day.temperature;
    const double rate = std::log((T.front() - air) / (T.back() - air)) / (t.back() - t.front());
    EXPECT_GT(rate, 1e-5);
    for (std::size_t i = 0; i < T.size(); ++i)
        EXPECT_NEAR((T[i] - air) / ((T.front() - air) * std::exp(-rate * (t[i] - t.front()))), 1,
                    1e-6);
}

TEST(Drive, AHotIdleMakesTheRunSlower) {
    vehicle::Vehicle car = sample::knocking(sample::cyclecar(), 8);
    car.engine.as<engine::Cylinder>()->oil.temperature = 363.15;
    const auto cold_head = [](vehicle::Vehicle made) {
        made.engine.as<engine::Cylinder>()->cooling.head_mass = 1e9;
        return made;
    };
    const auto cold_path = [](vehicle::Vehicle made) {
        made.charge_path[2].part.as<charge::PositiveBlower>()->case_mass = 1e9;
        made.charge_path[3].part.as<charge::Plenum>()->wall_thickness = 1e6;
        made.engine_bay.volume = 1e9;
        return made;
    };
    const auto best_spark = [](vehicle::Vehicle made) {
        made.engine.as<engine::Cylinder>()->spark.policy = engine::SparkPolicy::as_given;
        return made;
    };
    const auto lost = [](const vehicle::Vehicle& made) {
        vehicle::Idle idle;
        idle.time = 300;
        DriveOptions options;
        options.mark_distances = {300};
        Outing cool = outing({for_distance(301)}), hot = outing({idle, for_distance(301)});
        cool.starts = hot.starts = vehicle::Starts::cold;
        cool.shift_speed = hot.shift_speed = 6000 * rpm;
        return solve::drive(made, hot, options).marks.at(0).time -
               solve::drive(made, cool, options).marks.at(0).time;
    };
    const double all = lost(car), by_charge = lost(cold_head(car)), by_head = lost(cold_path(car));
    const double without_spark = lost(best_spark(car));
    std::cout << "a hot idle costs " << all << " s over 300 m: by the charge " << by_charge
              << ", by the head " << by_head << "; " << without_spark << " at best spark\n";
    EXPECT_GT(by_charge, 0.005);
    EXPECT_GT(by_head, 0.005);
    EXPECT_LT(without_spark, 0.9 * all);
    EXPECT_NEAR(by_charge + by_head, all, 0.25 * all);
}

}  // namespace windwall::solve
