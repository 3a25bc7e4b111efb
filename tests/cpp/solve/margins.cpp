#include "windwall/solve/answer/margins.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

constexpr double degree = std::numbers::pi / 180;

FullThrottlePoint pulled(const Vehicle& car) {
    VehicleSolver solver(car);
    return solver.at({4500 * rpm, 3});
}

/// Spark held where a full-throttle point has it, then something moved: the margin that is left.
double margin_of(Vehicle car, const FullThrottlePoint& full_throttle, double advance,
                 const vehicle::WhatIf& what_if) {
    auto& engine = *car.engine.as<engine::Cylinder>();
    auto& plan = engine.spark;
    engine.lambda = full_throttle.point.work.lambda;
    const double retard = full_throttle.point.spark.retard - advance;
    plan.policy = engine::SparkPolicy::as_given;
    plan.table.column = {{0, 1e4}, {retard, retard}};
    PointSolver point_solver(car, what_if);
    const Point point = point_solver.at(full_throttle.point.condition);
    EXPECT_TRUE(point.outcome.answered());
    return point.spark.margin;
}

// Each margin put into the vehicle leaves a knock margin of nothing, to a thousandth of an octane
// number, in the whole coupled point.
TEST(Margins, LeaveNothingWhenTheyAreUsedUp) {
    for (const Vehicle& car : {sample::cyclecar(), sample::cooled_cyclecar()}) {
        const FullThrottlePoint full_throttle = pulled(car);
        const Margins left = margins(car, full_throttle);
        ASSERT_TRUE(left.drive_ratio && left.charge_temperature && left.spark && left.boost);
        EXPECT_EQ(left.blower, "blower");
        EXPECT_GT(*left.spark, 0);
        EXPECT_GT(*left.charge_temperature, 0);
        EXPECT_GT(*left.boost, 0);
        EXPECT_NEAR(margin_of(car, full_throttle, *left.spark, {}), 0, 1e-3);
        EXPECT_NEAR(margin_of(car, full_throttle, 0, {1, *left.charge_temperature}), 0, 1e-3);
        Vehicle faster = car;
        faster.charge_path[2].part.as<charge::PositiveBlower>()->drive_ratio = *left.drive_ratio;
        EXPECT_NEAR(margin_of(faster, full_throttle, 0, {}), 0, 1e-3);
    }
}

// A faster blower also heats the charge, so the boost that is left is less than what the pressure
// alone would allow: re-solving finds another number than dividing the margin by one slope.
TEST(Margins, BoostIsLessThanItsPressureAlone) {
    const Vehicle car = sample::cyclecar();
    const FullThrottlePoint full_throttle = pulled(car);
    const Margins left = margins(car, full_throttle);
    PointSolver point_solver(car);
    const Point point = point_solver.at(full_throttle.point.condition);
    auto intake = point_solver.balance().intake(point_solver.balance().manifold());
    auto& engine = *car.engine.as<engine::Cylinder>();
    auto plan = engine;
    plan.lambda = point.work.lambda;
    plan.spark.policy = engine::SparkPolicy::as_given;
    plan.spark.table.column = {{0, 1e4}, {point.spark.retard, point.spark.retard}};
    intake.charge.pressure += *left.boost;
    EXPECT_GT(plan.choose_spark(intake, car.fuel).margin, 0.2);
}

// One degree is worth one octane number in the rule that the spark goes by.
TEST(Margins, SparkIsTheMarginInDegrees) {
    const Vehicle car = sample::cyclecar();
    const FullThrottlePoint full_throttle = pulled(car);
    EXPECT_NEAR(*margins(car, full_throttle).spark, full_throttle.point.spark.margin * degree,
                0.02 * degree);
}

// Too far already: negative, and none at all where there is no blower to slow down.
TEST(Margins, GoBackWhereNothingIsLeft) {
    Vehicle car = sample::unblown();
    car.engine.as<engine::Cylinder>()->knock_anchor.octane_number += 8;
    const FullThrottlePoint full_throttle = pulled(car);
    ASSERT_LT(full_throttle.point.spark.margin, 0);
    const Margins left = margins(car, full_throttle);
    EXPECT_LT(*left.spark, 0);
    EXPECT_LT(left.charge_temperature.value_or(-1), 0);
    EXPECT_FALSE(left.boost || left.drive_ratio);
    EXPECT_TRUE(left.blower.empty());
}

}  // namespace
}  // namespace windwall::solve
