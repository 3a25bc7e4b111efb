// What the columns of a drive say is what the vehicle does: at the limit of grip, while gears
// change, and where what is sprayed burns too.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "solve/drive_column.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

DriveResult away(const vehicle::Vehicle& car, double distance, double every = 0.05,
                 std::optional<double> fuel = {}) {
    vehicle::FullThrottle leg;
    leg.for_distance = distance;
    vehicle::Outing made;
    made.id = "away";
    made.fuel_on_board = fuel;
    made.legs = {leg};
    return drive(car, made, {.tolerance = 1e-7, .every = every});
}

double time_of(const DriveResult& drive, Happening what) {
    const auto found = std::ranges::find(drive.events, what, &DriveEvent::what);
    return found == drive.events.end() ? -1 : found->time;
}

double integral(const DriveResult& drive, std::string_view address) {
    const auto &time = column(drive, "time"), &of = column(drive, address);
    double sum = 0;
    for (std::size_t i = 1; i < time.size(); ++i)
        if (std::isfinite(of[i]) && std::isfinite(of[i - 1]))
            sum += (of[i] + of[i - 1]) / 2 * (time[i] - time[i - 1]);
    return sum;
}

/// Behind its blower it sprays mostly alcohol.
vehicle::Vehicle spraying_alcohol() {
    charge::EvaporativeInjection jet;
    jet.rated_flow = 200e-6 / 60;
    jet.pump_pressure = 8e5;
    jet.starts_at = 5e3;
    jet.methanol = 0.9;
    vehicle::Vehicle car = sample::cyclecar();
    car.charge_path.insert(car.charge_path.begin() + 3, {"jet", jet});
    return car;
}

}  // namespace

// Newton: what the tyres hold moves the body, whatever else turns behind them. What turns is sped
// up by the engine, which has more to give than the tyres hold.
TEST(DriveColumns, AtTheLimitOfGripTheBodyGainsWhatTheTyresHold) {
    vehicle::Vehicle car = sample::cyclecar();
    car.tyres.grip = 0.5;
    const DriveResult drive = away(car, 400);
    const double from = time_of(drive, Happening::tyres_spin);
    const double until = time_of(drive, Happening::shift_begins);
    ASSERT_GE(from, 0);
    ASSERT_GT(until, from + 1);
    const double mass = car.body.mass + car.body.rotating_mass(car.tyres.rolling_radius());
    int slipping = 0, geared = 0;
    for (std::size_t i = 0; i < drive.phase.size(); ++i) {
        const double time = column(drive, "time")[i];
        if (time <= from || time >= until || drive.phase[i] == Phase::shifting) continue;
        ++(drive.phase[i] == Phase::slipping ? slipping : geared);
        const double held = column(drive, "road/air")[i] + column(drive, "road/rolling")[i] +
                            column(drive, "road/grade")[i];
        EXPECT_NEAR(mass * column(drive, "acceleration")[i] + held,
                    car.tyres.grip_limit(car.body.mass), 1e-6 * held + 1e-6 * mass)
            << time;
    }
    EXPECT_GT(slipping, 3);
    EXPECT_GT(geared, 3);
}

TEST(DriveColumns, WhileGearsChangeNothingIsSaidOfTheEngine) {
    const DriveResult drive = away(sample::cyclecar(), 300);
    ASSERT_GE(time_of(drive, Happening::shift_begins), 0);
    int shifting = 0;
    for (std::size_t i = 0; i < drive.phase.size(); ++i) {
        const bool shifts = drive.phase[i] == Phase::shifting;
        shifting += shifts;
        for (const char* address : {"engine/speed", "engine/power", "engine/fuel_flow"})
            EXPECT_NE(std::isfinite(column(drive, address)[i]), shifts) << address;
        EXPECT_TRUE(std::isfinite(column(drive, "engine/head/temperature")[i]));
    }
    EXPECT_GT(shifting, 0);
}

TEST(DriveColumns, OfAnEngineThatIsOffNothingIsSaidButHowWarmItIs) {
    vehicle::Stop off;
    off.time = 30;
    off.engine = vehicle::StandingEngine::off;
    vehicle::Outing made;
    made.id = "off";
    made.legs = {off};
    const DriveResult drive = solve::drive(sample::cyclecar(), made);
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    EXPECT_TRUE(std::isnan(column(drive, "manifold/pressure").back()));
    EXPECT_EQ(column(drive, "pedal").back(), 0);
    EXPECT_TRUE(std::isfinite(column(drive, "engine/head/temperature").back()));
}

// A trapezium over rows 10 ms apart; what is left out are the gaps beside shifts.
TEST(DriveColumns, WhatIsSprayedComesFromItsOwnTank) {
    const DriveResult drive = away(spraying_alcohol(), 2000, 0.01, 3e-5);
    ASSERT_EQ(drive.end, DriveEnd::tank_empty);
    const double tank = 3e-5 * spraying_alcohol().fuel.density();
    EXPECT_NEAR(column(drive, "fuel_used").back(), tank, 1e-6 * tank);
    EXPECT_GT(integral(drive, "engine/fuel_flow"), 1.05 * tank);
    EXPECT_GT(column(drive, "liquid_used").back(), 0.05 * tank);
}

// Lifted at its mark and driven on: the speed is come to twice, and the last metres are rolled.
TEST(DriveColumns, AMarkIsTheFirstThatIsDrivenTo) {
    const double fast = 15;
    vehicle::FullThrottle pull;
    pull.to_speed = fast + 1;
    vehicle::Coast lift;
    lift.to_speed = fast - 1;
    vehicle::Stop stop;
    stop.time = 1;
    vehicle::Outing made;
    made.id = "twice";
    made.legs = {pull, lift, pull, stop};
    const DriveResult whole = drive(sample::cyclecar(), made, {.mark_speeds = {fast}});
    const double pulled = column(whole, "distance").back();
    const DriveResult drive = solve::drive(
        sample::cyclecar(), made, {.mark_distances = {20, pulled - 2}, .mark_speeds = {fast}});
    ASSERT_EQ(drive.marks.size(), 2u);
    EXPECT_EQ(drive.marks[0].at_distance, 20);
    EXPECT_EQ(drive.marks[1].at_speed, fast);
    const auto lifted = std::ranges::find(drive.events, 2L, &DriveEvent::leg);
    EXPECT_LT(drive.marks[1].time, lifted->time);
}

// A name that is only looked at outlives the run, which drives a vehicle of its own.
TEST(DriveColumns, WhatIsLackingIsCalledByANameOfTheVehicleThatWasAsked) {
    vehicle::Vehicle car = sample::cyclecar();
    const auto blower = std::ranges::find(
        car.charge_path, "blower", [](const auto& entry) { return std::string_view(entry.id); });
    ASSERT_NE(blower, car.charge_path.end());
    blower->part.as<charge::PositiveBlower>()->drive_ratio = 40;
    const DriveResult drive = away(car, 100);
    ASSERT_EQ(drive.end, DriveEnd::no_answer);
    ASSERT_EQ(drive.outcome.worst, "blower");
    EXPECT_EQ(static_cast<const void*>(drive.outcome.worst.data()), blower->id.data());
}

}  // namespace windwall::solve
