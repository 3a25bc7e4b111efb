// How exact a drive is: its energy, its steps, and what keeping moments does to it.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "plain_drive.hpp"
#include "samples.hpp"

namespace windwall::solve {
namespace {

using namespace plain;

double energy_left(const DriveResult& drive) {
    double left = drive.energy[static_cast<std::size_t>(Energy::crank)];
    for (const Energy entry : {Energy::driveline, Energy::clutch, Energy::tyres, Energy::air,
                               Energy::rolling, Energy::grade, Energy::brakes})
        left -= drive.energy[static_cast<std::size_t>(entry)];
    return left - (drive.kinetic_after - drive.kinetic_before) - drive.changed;
}

}  // namespace

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

}  // namespace windwall::solve
