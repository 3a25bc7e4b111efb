// The pedal that holds a torque, and the one that holds the engine alone.
#include "windwall/solve/part_load/held_torque.hpp"
#include "windwall/solve/part_load/idle.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "allocations.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

std::vector<Vehicle> vehicles() {
    auto all = sample::knocking_or_not();
    all.push_back(sample::belt_driven());
    return all;
}

// Whatever pedal holds it, a point asked for with that pedal gives the torque again.
TEST(HeldTorque, IsTheTorqueOfThePointAtItsPedal) {
    for (const Vehicle& car : vehicles()) {
        PointSolver solver(car), other(car);
        HeldTorque held(solver);
        for (const double speed : {1500 * rpm, 3000 * rpm, 5000 * rpm}) {
            const double most = other.at({speed, 15, 1}).torque;
            for (const double share : {0.05, 0.3, 0.6, 0.9, 0.99}) {
                const Point point = held.at({speed, 15, 1}, share * most);
                ASSERT_EQ(point.outcome.status, Status::solved) << speed / rpm << ' ' << share;
                EXPECT_NEAR(point.torque, share * most, 1e-7);
                const Point again = other.at({speed, 15, point.condition.opening});
                EXPECT_NEAR(again.torque, share * most, 1e-5) << speed / rpm << ' ' << share;
            }
        }
    }
}

TEST(HeldTorque, NeedsMorePedalForMoreTorqueUpToAnOpenThrottle) {
    for (const Vehicle& car : vehicles()) {
        PointSolver solver(car);
        const double most = PointSolver(car).at({3000 * rpm, 15, 1}).torque;
        HeldTorque held(solver);
        double last = 0;
        for (int i = 1; i <= 40; ++i) {
            const Point point = held.at({3000 * rpm, 15, 1}, most * i / 40.0001);
            ASSERT_TRUE(point.outcome.answered()) << i;
            EXPECT_GT(point.condition.opening, last) << i;
            last = point.condition.opening;
        }
        const Point open = held.at({3000 * rpm, 15, 1}, most * (1 - 1e-9));
        EXPECT_NEAR(open.torque, most, 1e-6 * most);
    }
}

TEST(HeldTorque, SaysOnWhichSideNoPedalHoldsIt) {
    const Vehicle car = sample::cyclecar();
    PointSolver solver(car);
    HeldTorque held(solver);
    const double most = PointSolver(car).at({3000 * rpm, 15, 1}).torque;
    const Point more = held.at({3000 * rpm, 15, 1}, 1.2 * most);
    EXPECT_EQ(more.outcome.status, Status::out_of_range);
    EXPECT_EQ(more.outcome.worst, beyond_throttle);
    EXPECT_EQ(more.condition.opening, 1);
    EXPECT_NEAR(more.torque, most, 1e-6);
    const Point less = held.at({3000 * rpm, 15, 1}, -2 * most);
    EXPECT_EQ(less.outcome.status, Status::out_of_range);
    EXPECT_EQ(less.condition.opening, 0);
    EXPECT_GT(less.torque, -2 * most);
}

// What was solved before, here or by the solver it borrows, does not show.
TEST(HeldTorque, ForgetsItsWay) {
    for (const Vehicle& car : vehicles()) {
        PointSolver solver(car);
        HeldTorque held(solver);
        for (int i = 0; i < 30; ++i) {
            const double speed = (2500 + 1500 * std::sin(0.7 * i)) * rpm;
            const double torque = 20 + 15 * std::sin(1.9 * i);
            if (i % 5 == 4) solver.at({speed, 15, 1});
            const Point point = held.at({speed, 15, 1}, torque);
            PointSolver fresh(car);
            const Point same = HeldTorque(fresh).at({speed, 15, 1}, torque);
            ASSERT_EQ(point.outcome.status, same.outcome.status) << i;
            EXPECT_NEAR(point.condition.opening, same.condition.opening, 1e-7) << i;
            EXPECT_NEAR(point.spark.retard, same.spark.retard, 1e-7) << i;
        }
    }
}

// A warm one costs about as much as a warm point held off knock, and nothing from the heap.
TEST(HeldTorque, TakesFewEvaluationsAndNothingFromTheHeap) {
    const Vehicle car = sample::cooled_cyclecar();
    PointSolver solver(car);
    HeldTorque held(solver);
    held.at({3000 * rpm, 20, 1}, 20);
    std::vector<long> took;
    double sum = 0;
    took.reserve(50);
    const std::size_t start = allocations();
    for (int i = 0; i < 50; ++i) {
        const long so_far = solver.evaluations();
        const Point point = held.at({(3000 + 10 * i) * rpm, 20, 1}, 20 + 0.1 * i);
        sum += point.condition.opening;
        took.push_back(solver.evaluations() - so_far);
    }
    EXPECT_EQ(allocations(), start);
    EXPECT_GT(sum, 0);
    std::ranges::sort(took);
    EXPECT_LE(took[took.size() / 2], 10);
    EXPECT_LE(took.back(), 30);
}

// Where the plan chooses, the margin to knock is kept at part load too, by the spark.
TEST(HeldTorque, KeepsTheMarginToKnock) {
    const Vehicle car = sample::knocking(sample::cyclecar(), 12);
    const engine::SparkPlan& plan = car.engine.as<engine::Cylinder>()->spark;
    PointSolver solver(car);
    HeldTorque held(solver);
    const double most = PointSolver(car).at({3500 * rpm, 15, 1}).torque;
    int retarded = 0;
    for (const double share : {0.2, 0.5, 0.8, 0.95}) {
        const Point point = held.at({3500 * rpm, 15, 1}, share * most);
        ASSERT_TRUE(point.outcome.answered()) << share;
        EXPECT_GT(plan.spare(point.spark), -1e-6) << share;
        retarded += point.spark.retard > 0;
        if (point.spark.retard > 0) {
            EXPECT_NEAR(plan.spare(point.spark), 0, 1e-6) << share;
        }
    }
    EXPECT_GE(retarded, 1);
}

/// Petrol and depression of an engine of so many cm3 that idles: kg/h and Pa.
struct Idling {
    Point point;
    double petrol{};
    double depression{};
};
Idling idling(double displacement, double cylinders) {
    Vehicle car = sample::unblown();
    car.charge_path.erase(car.charge_path.begin());
    auto& engine = *car.engine.as<engine::Cylinder>();
    engine.spark.policy = engine::SparkPolicy::hold_margin;
    engine.cylinders = cylinders;
    engine.bore = engine.stroke = std::cbrt(displacement * 4 / std::numbers::pi / cylinders);
    PointSolver solver(car);
    HeldTorque held(solver);
    const Point point = idle(held, car, idle_speed(car));
    return {
        point, 3600 * (point.work.fuel_flow + point.work.injected_fuel_flow),
        solver.balance().surroundings().ambient_pressure - solver.balance().manifold().pressure};
}

// Common practice, of no source: 0.2 to 0.5 kg/h and 50 to 70 kPa of engines of this size.
TEST(Idle, BurnsAndDrawsWhatEnginesOfThisSizeDo) {
    for (const double size : {400e-6, 500e-6, 600e-6, 700e-6}) {
        const Idling it = idling(size, 2);
        ASSERT_EQ(it.point.outcome.status, Status::solved) << size;
        EXPECT_NEAR(it.point.torque, 0, 1e-7);
        EXPECT_GT(it.petrol, 0.2) << size;
        EXPECT_LT(it.petrol, 0.5) << size;
        EXPECT_GT(it.depression, 50e3) << size;
        EXPECT_LT(it.depression, 70e3) << size;
    }
}

TEST(Idle, HasItsOwnSpark) {
    Vehicle car = sample::unblown();
    auto& spark = car.engine.as<engine::Cylinder>()->spark;
    PointSolver solver(car);
    HeldTorque held(solver);
    const Point late = idle(held, car, 1000 * rpm);
    EXPECT_NEAR(late.spark.retard, spark.idle_retard, 1e-9);
    spark.idle_retard = 0;
    const Point best = idle(held, car, 1000 * rpm);
    EXPECT_NEAR(best.spark.retard, 0, 1e-9);
    EXPECT_LT(best.work.fuel_flow, 0.97 * late.work.fuel_flow);
}

/// A blower ahead of the throttle, with a valve that the depression behind the plate opens.
Vehicle bypassed(bool front) {
    Vehicle car = sample::cyclecar();
    charge::Bypass valve;
    valve.area = 200e-6;
    auto& path = car.charge_path;
    path.insert(path.begin() + 3, {"bypass", valve});
    if (!front) {
        path.push_back({"rear_throttle", sample::throttle(30e-3)});
        path.erase(path.begin() + 1);
    }
    return car;
}

// A valve that its own opening helps to open may stand in two balances; the one with more gas going
// round is found from either side, and it is said that there is another.
TEST(Bypass, StandsAsFarOpenAsItCan) {
    int both = 0;
    for (const bool front : {true, false}) {
        const Vehicle car = bypassed(front);
        for (const double speed : {1000 * rpm, 1500 * rpm, 2500 * rpm}) {
            for (const double pedal : {0.0, 0.02, 0.05, 0.08, 0.12, 0.2}) {
                const vehicle::OperatingCondition condition{speed, 0, pedal};
                PointSolver down(car), cold(car);
                for (double o = 1; o > std::max(pedal, 0.01); o *= 0.8)
                    down.at({speed, 0, o});
                const Point from_open = down.at(condition), at_once = cold.at(condition);
                ASSERT_EQ(from_open.outcome.status, at_once.outcome.status);
                EXPECT_NEAR(from_open.torque, at_once.torque, 1e-6);
                both += cold.hotter_balance().has_value();
            }
        }
    }
    EXPECT_GE(both, 2);
}

}  // namespace
}  // namespace windwall::solve
