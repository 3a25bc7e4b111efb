// Drives held against closed forms: what a constant torque does from gear to gear, a clutch that
// slips, a road that slows, and how the steps and the events of the integration behave.
#include "windwall/solve/drive/drive.hpp"

#include "windwall/media/constants.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <iostream>
#include <map>
#include <stdexcept>
#include <vector>

#include "samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Outing;

constexpr double torque = 25, radius = 0.27, efficiency = 0.85, mass = 300, inertia = 0.015;
constexpr double rolling = 0.015, drag_area = 0.45;
constexpr double launch = 2500 * rpm, shift = 8000 * rpm, shift_time = 0.4;
constexpr std::array ratios{14.0, 9.0, 6.5, 5.2};

/// The same torque at every engine speed and nothing that is lost but in one place.
vehicle::Vehicle plain_car() {
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

double air_density(const vehicle::Vehicle& car) {
    return car.day.pressure.value() / (media::constants::gas_constant_air * car.day.temperature);
}

Outing outing(std::vector<vehicle::Leg> legs) {
    Outing made;
    made.id = "run";
    made.legs = std::move(legs);
    made.shift_speed = shift;
    made.launch_gear = 1;
    return made;
}

vehicle::FullThrottle for_distance(double metres) {
    vehicle::FullThrottle leg;
    leg.for_distance = metres;
    return leg;
}

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

const DriveEvent& event(const DriveResult& drive, Happening what, int which = 0) {
    for (const DriveEvent& each : drive.events)
        if (each.what == what && which-- == 0) return each;
    throw std::runtime_error("no such event");
}

double last(const DriveResult& drive, std::string_view address) {
    const auto at = std::ranges::find(drive.addresses, address) - drive.addresses.begin();
    return drive.columns.at(static_cast<std::size_t>(at)).back();
}

DriveOptions tight() {
    DriveOptions options;
    options.tolerance = 1e-9;
    return options;
}

double energy_left(const DriveResult& drive) {
    double left = drive.energy[static_cast<std::size_t>(Energy::crank)];
    for (const Energy entry : {Energy::driveline, Energy::clutch, Energy::tyres, Energy::air,
                               Energy::rolling, Energy::grade, Energy::brakes})
        left -= drive.energy[static_cast<std::size_t>(entry)];
    return left - (drive.kinetic_after - drive.kinetic_before) - drive.changed;
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
TEST(Drive, MetalCoolsByAnExponential) {
    vehicle::Vehicle car = sample::cyclecar();
    car.engine.as<engine::Cylinder>()->cooling.warm_air_share = 0;
    vehicle::Stop stop;
    stop.time = 600;
    stop.engine = vehicle::StandingEngine::off;
    Outing rest = outing({stop});
    rest.starts = vehicle::Starts::soaked;
    DriveOptions options = tight();
    options.every_standing = 100;
    const DriveResult drive = solve::drive(car, rest, options);
    const auto at = std::ranges::find(drive.addresses, "engine/block/temperature");
    const auto& T = drive.columns[static_cast<std::size_t>(at - drive.addresses.begin())];
    const auto& t = drive.columns[0];
    const double air = car.day.temperature;
    const double rate = std::log((T.front() - air) / (T.back() - air)) / (t.back() - t.front());
    EXPECT_GT(rate, 1e-5);
    for (std::size_t i = 0; i < T.size(); ++i)
        EXPECT_NEAR((T[i] - air) / ((T.front() - air) * std::exp(-rate * (t[i] - t.front()))), 1,
                    1e-6);
}

TEST(Drive, EnergyIsClosedInEveryVehicle) {
    vehicle::HoldSpeed hold;
    hold.speed = 15;
    hold.for_time = 20;
    vehicle::Coast coast;
    coast.for_time = 5;
    vehicle::Stop stop;
    stop.time = 10;
    vehicle::Idle idle;
    idle.time = 10;
    for (const vehicle::Vehicle& car :
         {plain_car(), sample::cyclecar(), sample::cooled_cyclecar(), sample::belt_driven()}) {
        Outing run = outing({idle, for_distance(400), coast, hold, stop});
        run.shift_speed.reset();
        const DriveResult drive = solve::drive(car, run);
        EXPECT_EQ(drive.end, DriveEnd::legs_done);
        const double size = drive.energy[static_cast<std::size_t>(Energy::crank)];
        EXPECT_GT(size, 1e4);
        EXPECT_NEAR(energy_left(drive), 0, 1e-6 * size);
    }
}

// Dormand and Prince's method is of fifth order: a hundred times the tolerance, a hundred times the
// error, for the estimate that sets the step is of what a step leaves.
TEST(Drive, ErrorsFollowTheTolerance) {
    const vehicle::Vehicle car = sample::cyclecar();
    const auto time = [&](double tolerance) {
        DriveOptions options;
        options.tolerance = tolerance;
        options.mark_distances = {400};
        return solve::drive(car, outing({for_distance(401)}), options).marks.at(0).time;
    };
    const double best = time(1e-10);
    EXPECT_LT(std::abs(time(1e-5) - best), 2e-3);
    EXPECT_LT(std::abs(time(1e-8) - best), 1e-5);
    EXPECT_LT(std::abs(time(1e-6) - time(0.5e-6)), 1e-4);
}

TEST(Drive, DoesNotDependOnWhatIsKept) {
    const vehicle::Vehicle car = sample::cyclecar();
    DriveOptions often, seldom;
    often.every = 0.01;
    seldom.every = 100;
    often.mark_distances = seldom.mark_distances = {100, 300};
    const DriveResult a = solve::drive(car, outing({for_distance(310)}), often);
    const DriveResult b = solve::drive(car, outing({for_distance(310)}), seldom);
    EXPECT_GT(a.phase.size(), 10 * b.phase.size());
    for (std::size_t i = 0; i < 2; ++i)
        EXPECT_NEAR(a.marks.at(i).time, b.marks.at(i).time, 1e-6);
}

// Two events between one step and the next, one at the very beginning and one that undoes itself.
TEST(Drive, SeesEventsHoweverCloseTheyAre) {
    vehicle::Vehicle car = plain_car();
    // Launched where it would shift at once: each shift follows the one before by its own time.
    Outing run = outing({for_distance(300)});
    run.shift_speed = launch + 1e-9;
    const DriveResult quick = solve::drive(car, run);
    ASSERT_EQ(quick.end, DriveEnd::legs_done);
    EXPECT_EQ(event(quick, Happening::shift_begins).gear, 1);
    EXPECT_NEAR(event(quick, Happening::shift_begins).time,
                event(quick, Happening::clutch_grips).time, 1e-6);

    // A leg that is over as it begins: the next one begins at the same moment.
    vehicle::FullThrottle reached;
    reached.to_speed = 10;
    const DriveResult twice = solve::drive(car, outing({reached, reached, reached}));
    ASSERT_EQ(twice.end, DriveEnd::legs_done);
    EXPECT_EQ(event(twice, Happening::leg_begins, 1).time,
              event(twice, Happening::leg_begins, 2).time);
    EXPECT_NEAR(last(twice, "road/speed"), 10, 1e-5);
}

// A hump so short that a step would go over it: what it takes is its height.
TEST(Drive, SeesWhatUndoesItselfWithinAStep) {
    vehicle::Vehicle car = plain_car();
    car.body.rolling_resistance = 0;
    car.body.drag_area = 1e-9;
    vehicle::Coast coast;
    coast.for_distance = 400;
    vehicle::FullThrottle up;
    up.to_speed = 20;
    Outing run = outing({up, coast});
    run.road.column = {{0, 150, 150.5, 151, 1000}, {0, 0, 0.2, 0, 0}, {0, 0, 0, 0, 0}};
    const DriveResult over = solve::drive(car, run), flat = solve::drive(car, [&] {
                                                         Outing level = run;
                                                         level.road.column[1] = {0, 0, 0, 0, 0};
                                                         return level;
                                                     }());
    ASSERT_EQ(over.end, DriveEnd::legs_done);
    const double lost =
        (std::pow(last(flat, "road/speed"), 2) - std::pow(last(over, "road/speed"), 2)) / 2;
    // Its height is the mean sine of a slope that rises evenly to 0.2, over a metre of road.
    const double height = (std::sqrt(1 + 0.2 * 0.2) - 1) / 0.2;
    EXPECT_NEAR(lost, height * media::constants::gravity, 1e-4);
}

TEST(Drive, SaysWhereALimitIsPassed) {
    const vehicle::Vehicle car = sample::cyclecar();
    DriveOptions options = tight();
    options.limits = {{"road/speed", 20.0, {}, "the fence"}};
    const DriveResult drive = solve::drive(car, outing({for_distance(400)}), options);
    const DriveEvent& passed = event(drive, Happening::limit_passed);
    EXPECT_EQ(passed.about, "road/speed");
    EXPECT_NEAR(passed.road_speed, 20, 1e-5);
}

TEST(Drive, EndsByAName) {
    vehicle::Vehicle car = plain_car();
    vehicle::FullThrottle ever;
    ever.to_speed = 200;
    EXPECT_EQ(solve::drive(car, outing({ever})).end, DriveEnd::no_more_speed);
    Outing road = outing({for_distance(500)});
    road.road_length = 200;
    const DriveResult short_road = solve::drive(car, road);
    EXPECT_EQ(short_road.end, DriveEnd::road_ends);
    EXPECT_NEAR(last(short_road, "distance"), 200, 1e-5);
    Outing dry = outing({for_distance(5000)});
    dry.fuel_on_board = 2e-5;
    EXPECT_EQ(solve::drive(car, dry).end, DriveEnd::tank_empty);
    DriveOptions stopped;
    stopped.go_on = [](double time) { return time < 3; };
    const DriveResult part = solve::drive(car, outing({for_distance(500)}), stopped);
    EXPECT_EQ(part.end, DriveEnd::cancelled);
    EXPECT_GT(part.phase.size(), 3U);
}

// A leg that ends where a mark stands has come to it, whatever is rounded on the way.
TEST(Drive, NotesAMarkAtTheEndOfTheLastLeg) {
    const vehicle::Vehicle car = plain_car();
    for (int i = 0; i < 40; ++i) {
        DriveOptions options;
        const double metres = 20 + 7.7 * i;
        vehicle::FullThrottle up;
        up.to_speed = 10 + i / 3.0;
        options.mark_distances = {metres};
        EXPECT_EQ(solve::drive(car, outing({for_distance(metres)}), options).marks.size(), 1U);
        options.mark_distances = {};
        options.mark_speeds = {*up.to_speed};
        EXPECT_EQ(solve::drive(car, outing({up}), options).marks.size(), 1U) << *up.to_speed;
    }
}

// The shift is never reached in a gear in which air and thrust balance before it.
TEST(Drive, EndsWhereALowGearGetsNoFaster) {
    vehicle::Vehicle car = plain_car();
    car.body.drag_area = 8;
    vehicle::FullThrottle up;
    up.to_speed = 60;
    const DriveResult drive = solve::drive(car, outing({up}));
    EXPECT_EQ(drive.end, DriveEnd::no_more_speed);
    EXPECT_LT(event(drive, Happening::leg_begins).gear, static_cast<long>(ratios.size()));
    const auto shifts =
        std::ranges::count(drive.events, Happening::shift_begins, &DriveEvent::what);
    EXPECT_LT(shifts, 3);
    EXPECT_LT(last(drive, "time"), 300);
}

// On a hill a speed that will not come there may come behind it.
TEST(Drive, WaitsForAFlatterRoad) {
    vehicle::FullThrottle up;
    up.to_speed = 30;
    Outing hill = outing({up});
    hill.road.column = {{0, 200, 201, 700, 701}, {0, 0, 0.17, 0.17, 0}, {0, 0, 0, 0, 0}};
    EXPECT_EQ(solve::drive(plain_car(), hill).end, DriveEnd::legs_done);
}

// Turned round it comes back along the road that it went: as a road drawn from its other end.
TEST(Drive, ComesBackAlongTheRoad) {
    vehicle::Vehicle car = plain_car();
    vehicle::Stop turn;
    turn.time = 5;
    turn.turn_round = true;
    Outing both = outing({for_distance(300), turn, for_distance(300)});
    both.road.column = {{0, 100, 180, 600}, {0.01, 0.03, -0.02, 0.02}, {1, -3, 4, 2}};
    DriveOptions options = tight();
    options.mark_distances = {50, 150, 299};
    const DriveResult there = solve::drive(car, both, options);
    const double end = event(there, Happening::leg_begins, 2).distance;
    Outing mirrored = outing({for_distance(300)});
    mirrored.road.column.resize(3);
    for (std::size_t i = both.road.column[0].size(); i-- > 0;) {
        mirrored.road.column[0].push_back(std::max(0.0, end - both.road.column[0][i]));
        mirrored.road.column[1].push_back(-both.road.column[1][i]);
        mirrored.road.column[2].push_back(-both.road.column[2][i]);
    }
    const double at = (end - 180) / (600 - 180);  // where it stands, of the last piece
    mirrored.road.column[1].front() = -std::lerp(-0.02, 0.02, at);
    mirrored.road.column[2].front() = -std::lerp(4.0, 2.0, at);
    const DriveResult back = solve::drive(car, mirrored, options);
    ASSERT_EQ(there.marks.size(), 6U);
    ASSERT_EQ(back.marks.size(), 3U);
    for (std::size_t i = 0; i < 3; ++i)
        EXPECT_NEAR(there.marks[3 + i].time, back.marks[i].time, 1e-6);
    EXPECT_GT(std::abs(there.marks[5].time - there.marks[2].time), 0.1);
    turn.turn_round = false;
    both.legs[1] = turn;
    const DriveResult again = solve::drive(car, both, options);
    EXPECT_NEAR(again.marks.at(5).time, again.marks.at(2).time, 1e-6);
}

// The same without a road table: what the day's wind and the goal's grade gave, they take.
TEST(Drive, TurnsTheWindAndTheGrade) {
    vehicle::Vehicle car = plain_car();
    car.day.headwind = 3;
    car.goal.grade = 0.01;
    vehicle::Stop turn;
    turn.time = 5;
    turn.turn_round = true;
    DriveOptions options = tight();
    options.mark_distances = {299};
    const DriveResult there =
        solve::drive(car, outing({for_distance(300), turn, for_distance(300)}), options);
    car.day.headwind = -3;
    car.goal.grade = -0.01;
    const DriveResult back = solve::drive(car, outing({for_distance(300)}), options);
    EXPECT_NEAR(there.marks.at(1).time, back.marks.at(0).time, 1e-6);
    EXPECT_LT(there.marks.at(1).time, there.marks.at(0).time - 0.1);
}

// A hot idle before the launch costs time by the charge, by the head and by the spark that both
// force; oil that stays as it is keeps friction out of it.
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
