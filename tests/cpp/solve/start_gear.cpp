#include "windwall/solve/full_throttle/top_speed.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "solve/samples.hpp"

/// Which gear a run-up starts in.
namespace windwall::solve {
namespace {

using vehicle::Vehicle;

driveline::Gearbox& box(Vehicle& car) { return *car.driveline[1].part.as<driveline::Gearbox>(); }

/// A cyclecar with first gears short enough to spin the tyres, and boxes of every weight.
Vehicle any_geared(std::mt19937& random) {
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    Vehicle car = sample::cyclecar();
    car.tyres.grip = between(0.15, 1.1);
    car.goal.grade = between(0, 1) < 0.3 ? between(0, 0.08) : 0;
    box(car).ratios = {between(2, 9)};
    while (box(car).ratios.back() > 0.9 && box(car).ratios.size() < 6)
        box(car).ratios.push_back(box(car).ratios.back() * between(0.5, 0.85));
    box(car).inertia = between(0, 0.03);
    box(car).shift_time = 0;  // what the launch knows nothing of
    return car;
}

/// The run over the goal's road that starts in each gear, and the gear that was taken.
struct Starts {
    std::vector<RunUp> runs;
    std::size_t taken{};

    explicit Starts(const Vehicle& car) {
        VehicleSolver solver(car);
        const FullLoadCurve engine(solver);
        std::vector<TractiveEffortCurve> curves = tractive_effort_curves(engine, solver);
        const double equilibrium = find_equilibrium_speed(solver, engine, curves).road_speed;
        for (std::size_t gear = 0; gear < curves.size(); ++gear)
            runs.push_back(run_up(solver, curves, gear, equilibrium, *car.goal.run_up));
        taken = start_gear(solver, engine);
    }
    double time() const { return runs[taken].time; }
    double shortest() const {
        double least = runs.front().time;
        for (const RunUp& run : runs)
            least = std::min(least, run.time);
        return least;
    }
    double longest() const {
        double most = 0;
        for (const RunUp& run : runs)
            most = std::max(most, run.time);
        return most;
    }
};

// The launch looks at the first moment only. Over a whole road no other gear to start in saves more
// than the thousandth within which two gears count as equal; 2e-4 at most was seen.
TEST(StartGear, NoOtherGearGetsThereSooner) {
    std::mt19937 random(3);
    int first = 0, higher = 0, matters = 0;
    for (int i = 0; i < 200; ++i) {
        Vehicle car = any_geared(random);
        for (double road : {60.0, 400.0}) {
            car.goal.run_up = road;
            const TopSpeed found = top_speed(car);
            if (!found.outcome.answered()) continue;
            const Starts starts(car);
            EXPECT_EQ(found.run_up->start_gear, starts.runs[starts.taken].start_gear);
            EXPECT_LE(starts.time(), starts.shortest() * (1 + 1e-3)) << i;
            (starts.taken > 0 ? higher : first) += 1;
            matters += starts.longest() > starts.shortest() * (1 + 1e-2);
        }
    }
    EXPECT_GT(first, 50);
    EXPECT_GT(higher, 50);
    EXPECT_GT(matters, 50);
}

// Uphill first gear alone gets through the slipping of the clutch.
TEST(StartGear, IsOneThatGetsUnderWay) {
    Vehicle car = sample::cyclecar();
    car.goal.grade = 0.25;
    box(car).ratios = {4.5, 1.2};
    const TopSpeed found = top_speed(car);
    ASSERT_TRUE(found.outcome.answered());
    EXPECT_EQ(found.run_up->start_gear, 1);
    EXPECT_EQ(found.run_up->gear, 1);
}

// All gears spin the tyres and the box weighs nothing: first heats the clutch least, and stays in
// use until it has ceased to slip.
TEST(StartGear, IsFirstWhereNoneIsBetter) {
    Vehicle car = sample::cyclecar();
    car.tyres.grip = 0.1;
    box(car).inertia = 0;
    EXPECT_EQ(top_speed(car).run_up->start_gear, 1);
}

}  // namespace
}  // namespace windwall::solve
