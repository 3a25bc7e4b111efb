// What a drive remembers from moment to moment: every temperature, the film on the walls, the pump
// with its delay and its line. Each test falls when its state is taken out.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "drive_column.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;

vehicle::Outing full_throttle(double seconds, vehicle::Starts starts = vehicle::Starts::idling) {
    vehicle::FullThrottle leg;
    leg.for_time = seconds;
    vehicle::Outing made;
    made.id = "run";
    made.starts = starts;
    made.shift_speed = 6000 * rpm;
    made.legs = {leg};
    return made;
}

const DriveEvent& event(const DriveResult& drive, Happening what) {
    const auto found = std::ranges::find(drive.events, what, &DriveEvent::what);
    if (found == drive.events.end()) throw std::runtime_error("no such event");
    return *found;
}

/// Sprays behind the blower once the manifold has a few kilopascals.
vehicle::Vehicle spraying() {
    charge::EvaporativeInjection jet;
    jet.rated_flow = 50e-6 / 60;
    jet.pump_pressure = 8e5;
    jet.starts_at = 15e3;
    jet.wall_share = 0.5;
    jet.delay = 0.4;
    jet.pump_rise_time = 0.5;
    vehicle::Vehicle car = sample::cyclecar();
    car.charge_path.insert(car.charge_path.begin() + 3, {"jet", jet});
    return car;
}

double at(const DriveResult& drive, std::string_view address, double time) {
    const auto& times = column(drive, "time");
    const auto k = std::ranges::lower_bound(times, time) - times.begin();
    return column(drive, address).at(static_cast<std::size_t>(k));
}

}  // namespace

TEST(DriveStates, EveryNodeTakesItsTime) {
    const vehicle::Vehicle car = sample::with_every_node();
    DriveOptions options;
    options.every = 0.1;
    const DriveResult drive = solve::drive(car, full_throttle(60, vehicle::Starts::cold), options);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const std::set<std::string> nodes{"engine/head",
                                      "engine/oil",
                                      "engine/block",
                                      "charge_path/blower/case",
                                      "charge_path/pipe/wall",
                                      "charge_path/cooler/core",
                                      "charge_path/plenum/wall",
                                      "driveline/belt/belt",
                                      "under_hood/air"};
    for (const std::string& node : nodes) {
        const auto& temperature = column(drive, node + "/temperature");
        EXPECT_NEAR(temperature.front(), car.day.temperature, 1e-9) << node;
        EXPECT_GT(temperature.back(), car.day.temperature + 0.5) << node;
        // Not at once: after a fifth of a second nothing is where it is after a minute.
        EXPECT_LT(std::abs(at(drive, node + "/temperature", 0.2) - temperature.front()),
                  0.5 * std::abs(temperature.back() - temperature.front()))
            << node;
    }
}

TEST(DriveStates, APumpRunsOnceItsDelayIsOver) {
    const DriveResult drive = solve::drive(spraying(), full_throttle(12));
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const double on = event(drive, Happening::pump_switched_on).time;
    EXPECT_GT(on, 0);
    EXPECT_NEAR(event(drive, Happening::pump_runs).time, on + 0.4, 1e-6);
    EXPECT_EQ(at(drive, "charge_path/jet/liquid_flow", on + 0.2), 0);
    // By its rise of half a second not all of it is there after a fifth of one.
    const double soon = at(drive, "charge_path/jet/liquid_flow", on + 0.6);
    const double late = column(drive, "charge_path/jet/liquid_flow").back();
    EXPECT_GT(soon, 0);
    EXPECT_LT(soon, 0.9 * late);
}

TEST(DriveStates, TheFilmComesLateAndStaysLate) {
    vehicle::Vehicle car = spraying();
    const DriveResult drive = solve::drive(car, full_throttle(15));
    const double film_time = car.engine.as<engine::Cylinder>()->evaporation.film_time;
    const double film = column(drive, "film").back();
    const double sprayed = column(drive, "charge_path/jet/liquid_flow").back();
    // Half of the spray lands on the wall and stays there for its time; some of it has dried.
    EXPECT_GT(film, 0.3 * 0.5 * sprayed * film_time);
    EXPECT_LT(film, 1.1 * sprayed * film_time);
    car.engine.as<engine::Cylinder>()->evaporation.film_time = 4 * film_time;
    EXPECT_GT(column(solve::drive(car, full_throttle(15)), "film").back(), 2.5 * film);
}

/// Of the mixture from when the pump runs on: least and most, and what it ends at.
struct Mixtures {
    double leanest{}, richest{}, last{}, asked{};
};

Mixtures mixtures(std::optional<double> cut, std::optional<double> trim_time) {
    vehicle::Vehicle car = spraying();
    auto& cylinder = *car.engine.as<engine::Cylinder>();
    cylinder.spark.richest = 1;  // none against knock
    cylinder.combustion.trim_time = trim_time;
    auto& jet = *car.charge_path[3].part.as<charge::EvaporativeInjection>();
    jet.methanol = 1;
    jet.fuel_cut = cut;
    const DriveResult drive = solve::drive(car, full_throttle(15));
    EXPECT_EQ(drive.end, DriveEnd::legs_done);
    const double runs = event(drive, Happening::pump_runs).time;
    Mixtures found{0, 2, 0, cylinder.lambda};
    for (std::size_t k = 0; k < column(drive, "time").size(); ++k) {
        const double lambda = column(drive, "engine/lambda")[k];
        if (column(drive, "time")[k] < runs || std::isnan(lambda)) continue;
        found.leanest = std::max(found.leanest, lambda);
        found.richest = std::min(found.richest, lambda);
        found.last = lambda;
    }
    return found;
}

// A loop follows what is sprayed: rich until it has; a map that reads it does so at once.
TEST(DriveStates, TheTrimComesLate) {
    const Mixtures at_once = mixtures({}, {});
    EXPECT_NEAR(at_once.richest, at_once.asked, 1e-9);
    EXPECT_NEAR(at_once.leanest, at_once.asked, 1e-9);
    const Mixtures late = mixtures({}, 0.5), later = mixtures({}, 2);
    EXPECT_LT(late.richest, 0.98 * late.asked);
    EXPECT_LT(later.richest, late.richest);
    EXPECT_NEAR(late.last, late.asked, 0.01);
}

// Cut by what the spray makes up for in the end: lean until pump, line and film have brought it.
TEST(DriveStates, APetrolCutStumbles) {
    const Mixtures never = mixtures(0, {});
    EXPECT_LT(never.last, 0.97 * never.asked);
    EXPECT_LT(never.leanest, 1.001 * never.asked);
    const Mixtures stumbles = mixtures(never.asked / never.last - 1, {});
    EXPECT_NEAR(stumbles.last, stumbles.asked, 0.02);
    EXPECT_GT(stumbles.leanest, 1.01 * stumbles.asked);
}

/// Seconds from when a pump runs to when its line is full, and how far the wait shows in the flow.
double filling_time(double line_volume) {
    vehicle::Vehicle car = spraying();
    auto& jet = *car.charge_path[3].part.as<charge::EvaporativeInjection>();
    jet.check_valve = false;
    jet.line_volume = line_volume;
    const DriveResult drive = solve::drive(car, full_throttle(15));
    const double runs = event(drive, Happening::pump_runs).time;
    const double full = event(drive, Happening::line_full).time;
    EXPECT_EQ(at(drive, "charge_path/jet/liquid_flow", (runs + full) / 2), 0);
    EXPECT_GT(at(drive, "charge_path/jet/liquid_flow", full + 0.5), 0);
    return full - runs;
}

// What the pump gives from its rise on fills the line first: V = q (t - t_r (1 - exp(-t/t_r))).
TEST(DriveStates, ALineFillsBeforeAnythingIsSprayed) {
    const auto pumped = [](double t) { return t - 0.5 * (1 - std::exp(-t / 0.5)); };
    const double small = filling_time(0.3e-6), large = filling_time(0.6e-6);
    EXPECT_GT(small, 0.1);
    // The pressure at the nozzle moves a little meanwhile, and its flow with it.
    EXPECT_NEAR(pumped(large) / pumped(small), 2, 0.05);
}

vehicle::Vehicle triggered(const charge::Trigger& trigger) {
    vehicle::Vehicle car = spraying();
    auto& jet = *car.charge_path[3].part.as<charge::EvaporativeInjection>();
    jet.starts_at.reset();
    jet.trigger = trigger;
    return car;
}

TEST(DriveStates, TriggersSwitchWhereTheyAreMet) {
    charge::Trigger revs;
    revs.engine_speed_above = 5000 * rpm;
    const DriveResult by_revs = solve::drive(triggered(revs), full_throttle(12));
    EXPECT_NEAR(event(by_revs, Happening::pump_switched_on).engine_speed / rpm, 5000, 0.1);
    // The next gear turns it slower than that.
    const DriveEvent& off = event(by_revs, Happening::pump_switched_off);
    EXPECT_GE(off.time, event(by_revs, Happening::shift_ends).time);

    const std::string before = "charge_path/blower/outlet/temperature";
    const vehicle::Outing from_cold = full_throttle(20, vehicle::Starts::cold);
    charge::Trigger heat;
    heat.charge_temperature_above = 500;
    const DriveResult cool = solve::drive(triggered(heat), from_cold);
    EXPECT_EQ(std::ranges::count(cool.events, Happening::pump_switched_on, &DriveEvent::what), 0);
    heat.charge_temperature_above = at(cool, before, 8) - 1;
    DriveOptions often;
    often.every = 0.02;
    const DriveResult warm = solve::drive(triggered(heat), from_cold, often);
    const double on = event(warm, Happening::pump_switched_on).time;
    EXPECT_GT(on, 1);
    EXPECT_NEAR(at(warm, before, on), *heat.charge_temperature_above, 0.3);

    charge::Trigger foot;
    foot.pedal_above = 0.8;
    vehicle::Outing lifting = full_throttle(6);
    vehicle::Coast coast;
    coast.for_time = 3;
    lifting.legs.push_back(coast);
    const DriveResult by_foot = solve::drive(triggered(foot), lifting);
    const DriveEvent& lifted = event(by_foot, Happening::pump_switched_off);
    EXPECT_EQ(lifted.leg, 2);
    EXPECT_NEAR(lifted.time, 6, 1e-3);
}

/// One change of gear that takes seconds, and a spray that would come at a time of one's choice.
DriveResult slow_shift(vehicle::Vehicle& car, double delay) {
    auto& jet = *car.charge_path[3].part.as<charge::EvaporativeInjection>();
    jet.boost_referenced = true;
    jet.delay = delay;
    jet.pump_rise_time = 2;
    vehicle::Outing run = full_throttle(20);
    run.shift_time = 4;
    DriveOptions options;
    options.every = 0.05;
    return solve::drive(car, run, options);
}

TEST(DriveStates, PumpsGoOnWhileGearsChange) {
    vehicle::Vehicle car = spraying();
    const DriveResult plain = slow_shift(car, 0);
    const double on = event(plain, Happening::pump_switched_on).time;
    const double begins = event(plain, Happening::shift_begins).time;
    ASSERT_GT(begins, on);
    const DriveResult drive = slow_shift(car, begins - on + 1);  // in the middle of the shift
    const double runs = event(drive, Happening::pump_runs).time;
    const double ends = event(drive, Happening::shift_ends).time;
    ASSERT_LT(runs, ends);
    // Each a moment after its own shift, where too little boost is left and both pumps fall alike.
    const double ended = event(plain, Happening::shift_ends).time;
    const double flow = at(drive, "charge_path/jet/liquid_flow", ends + 0.1);
    const double usual = at(plain, "charge_path/jet/liquid_flow", ended + 0.1);
    const auto share = [](double seconds) { return 1 - std::exp(-seconds / 2); };
    EXPECT_NEAR(flow / usual, share(ends - runs) / share(ended - on), 0.01);
}

// The air of the bay follows within seconds: a rate that stood still would carry it far past.
TEST(DriveStates, MetalGoesOnWhileGearsChange) {
    vehicle::Vehicle car = spraying();
    const DriveResult drive = slow_shift(car, 0);
    const double begins = event(drive, Happening::shift_begins).time;
    const std::string bay = "under_hood/air/temperature";
    const double first = at(drive, bay, begins + 0.5) - at(drive, bay, begins + 0.01);
    const double late = at(drive, bay, begins + 3.9) - at(drive, bay, begins + 3.4);
    ASSERT_GT(std::abs(first), 1e-3);
    EXPECT_LT(std::abs(late), 0.7 * std::abs(first));
}

TEST(DriveStates, AnEmptyTankEndsTheSprayAndNotTheDrive) {
    vehicle::Outing run = full_throttle(15);
    run.liquid_on_board = 5e-6;
    const DriveResult drive = solve::drive(spraying(), run);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_NEAR(column(drive, "liquid_used").back(), 5e-6 * 997, 2e-5 * 997 * 5e-6 + 1e-7);
    EXPECT_EQ(column(drive, "charge_path/jet/liquid_flow").back(), 0);
    EXPECT_GT(event(drive, Happening::liquid_empty).time, event(drive, Happening::pump_runs).time);
}

// So much water drowns the engine at the launch: the drive says that it stands.
TEST(DriveStates, ADrownedEngineStalls) {
    vehicle::Vehicle car = spraying();
    auto& jet = *car.charge_path[3].part.as<charge::EvaporativeInjection>();
    jet.starts_at.reset();
    jet.rated_flow = 400e-6 / 60;
    vehicle::Outing run = full_throttle(1e5);
    EXPECT_EQ(solve::drive(car, run).end, DriveEnd::stalled);
}

}  // namespace windwall::solve
