#include "windwall/solve/point/point.hpp"

#include "windwall/solve/point/loop_bracket.hpp"
#include "windwall/solve/point/series_bracket.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::OperatingCondition;
using vehicle::Vehicle;

const std::vector<OperatingCondition>& conditions() {
    static const std::vector<OperatingCondition> all{{2500 * rpm, 10, 1},    {4200 * rpm, 25, 1},
                                                     {6200 * rpm, 35, 1},    {3000 * rpm, 15, 0.5},
                                                     {3000 * rpm, 15, 0.15}, {1500 * rpm, 0, 0.06}};
    return all;
}

double flow_enthalpy(const media::Stream& stream) {
    return stream.gas_flow() * stream.gas.enthalpy(stream.temperature);
}

// The air path as one control volume, from the published stations alone: what enters leaves, and
// the enthalpy gained is what blowers put in less what coolers take out.
TEST(OperatingPoint, AirPathIsAClosedControlVolume) {
    for (const Vehicle& car : {sample::cyclecar(), sample::cooled_cyclecar()}) {
        PointSolver solver(car);
        for (const OperatingCondition& condition : conditions()) {
            const Point point = solver.at(condition);
            ASSERT_EQ(point.outcome.status, Status::solved);
            const auto stations = solver.balance().stations();
            const double flow = stations.front().inlet.gas_flow();
            double gained = 0;
            for (std::size_t i = 0; i < stations.size(); ++i) {
                EXPECT_NEAR(stations[i].outlet.gas_flow() / flow, 1, 1e-12);
                if (i > 0) {
                    EXPECT_EQ(stations[i].inlet.pressure, stations[i - 1].outlet.pressure);
                }
                // heat_to_charge of a blower follows from V_d, N and the pressures, not from the
                // temperatures; a cooler's heat is what its own outlet says.
                gained += car.charge_path[i].id == "cooler"
                              ? flow_enthalpy(stations[i].outlet) - flow_enthalpy(stations[i].inlet)
                              : stations[i].compression.heat_to_charge;
            }
            const double rise =
                flow_enthalpy(stations.back().outlet) - flow_enthalpy(stations.front().inlet);
            EXPECT_NEAR(rise, gained, 1e-9 * std::abs(flow_enthalpy(stations.front().inlet)));
            // The engine draws what arrives: volumetric efficiency times the manifold's density.
            const auto& engine = *car.engine.as<engine::Cylinder>();
            const auto intake = solver.balance().intake(solver.balance().manifold());
            const media::Stream& manifold = solver.balance().manifold();
            const double density = manifold.pressure / (manifold.gas.R * manifold.temperature);
            const double drawn = engine.volumetric_efficiency(intake, car.fuel) *
                                 engine.swept_volume() * density * condition.engine_speed /
                                 (4 * std::numbers::pi);
            EXPECT_NEAR(drawn / flow, 1, 1e-9);
        }
    }
}

// Roots: the gas work is V_d N (p2 - p1), whatever leaks and however hot it is.
TEST(OperatingPoint, RootsPowerIsSweptVolumeTimesPressureRise) {
    const Vehicle car = sample::cyclecar();
    PointSolver solver(car);
    for (const OperatingCondition& condition : conditions()) {
        ASSERT_TRUE(solver.at(condition).outcome.answered());
        const auto& blower = solver.balance().stations()[2];
        const double revolutions = 1.35 * condition.engine_speed / (2 * std::numbers::pi);
        const double rise = blower.outlet.pressure - blower.inlet.pressure;
        EXPECT_NEAR(blower.compression.indicated_power, 230e-6 * revolutions * rise,
                    1e-9 * 230e-6 * revolutions * 1e5);
    }
}

TEST(OperatingPoint, WarmAndColdStartsAgree) {
    const Vehicle car = sample::cooled_cyclecar();
    PointSolver warm(car);
    for (const OperatingCondition& condition : conditions()) {
        PointSolver cold(car);
        const double difference = warm.at(condition).torque / cold.at(condition).torque - 1;
        EXPECT_NEAR(difference, 0, 1e-8);
    }
}

// Newton's method and brackets share nothing but the residuals.
TEST(OperatingPoint, BracketsFindWhatNewtonFinds) {
    for (Vehicle car : {sample::cyclecar(), sample::cooled_cyclecar(), sample::unblown()}) {
        car.engine.as<engine::Cylinder>()->spark.policy = engine::SparkPolicy::as_given;
        car.engine.as<engine::Cylinder>()->spark.table.column = {{0, 1e4}, {0, 0}};
        for (const OperatingCondition& condition : conditions()) {
            PointSolver newton(car);
            ASSERT_TRUE(newton.at(condition).outcome.answered());
            vehicle::Balance balance(car);
            balance.hold(condition);
            std::vector<double> x(balance.unknowns().size()), r(balance.unknowns().size());
            ASSERT_EQ(bracket_series(balance, x, 100000).status, Status::solved)
                << condition.opening;
            EXPECT_NEAR(balance.manifold().pressure / newton.balance().manifold().pressure, 1,
                        1e-7);
            EXPECT_NEAR(balance.manifold().dry_air / newton.balance().manifold().dry_air, 1, 1e-7);
            balance.residuals(x, r);
            for (double residual : r)
                EXPECT_NEAR(residual, 0, 1e-6);
        }
    }
}

TEST(OperatingPoint, BracketsAreGivenUpAtTheirBudget) {
    Vehicle looped = sample::cyclecar();
    looped.charge_path.insert(looped.charge_path.begin() + 3, {"bypass", charge::Bypass{}});
    for (const Vehicle& car : {sample::cyclecar(), looped}) {
        vehicle::Balance balance(car);
        balance.hold(conditions().front());
        std::vector<double> x(balance.unknowns().size());
        for (int budget : {0, 100, 300}) {
            const Outcome outcome = bracket_network(balance, x, budget);
            EXPECT_EQ(outcome.status, Status::not_converged);
            EXPECT_LE(outcome.evaluations, budget + 200);  // what was begun is ended
        }
        EXPECT_EQ(bracket_network(balance, x, 1000000).status, Status::solved);
    }
}

TEST(OperatingPoint, TwoSonicValvesInSeries) {
    Vehicle car = sample::unblown();
    car.charge_path.insert(car.charge_path.begin() + 2, {"second", sample::throttle(34e-3)});
    for (double opening : {0.05, 0.1, 0.3, 1.0}) {
        PointSolver solver(car);
        EXPECT_EQ(solver.at({4000 * rpm, 0, opening}).outcome.status, Status::solved);
    }
}

// A wide blower with a wide leak at low speed heats itself faster than it breathes.
TEST(OperatingPoint, RunawayIsNamed) {
    Vehicle car = sample::cyclecar();
    auto& blower = *car.charge_path[2].part.as<charge::PositiveBlower>();
    blower.displacement = 1200e-6;
    blower.leak_area = 900e-6;
    blower.drive_ratio = 4;
    PointSolver solver(car);
    const Point point = solver.at({1200 * rpm, 0, 1});
    EXPECT_FALSE(point.outcome.answered() && solver.balance().manifold().temperature > 1200);
}

TEST(OperatingPoint, KnockHoldsTheThrottleBack) {
    Vehicle car = sample::cyclecar();
    auto& engine = *car.engine.as<engine::Cylinder>();
    engine.knock_anchor.octane_number += 36;
    PointSolver solver(car);
    const Point point = solver.at({3000 * rpm, 0, 1});
    ASSERT_EQ(point.outcome.status, Status::knock_limited);
    EXPECT_LT(point.condition.opening, 1);
    EXPECT_NEAR(point.spark.margin, engine.spark.wanted_margin(point.spark.spread), 1e-3);
    EXPECT_NEAR(vehicle::spark_left(solver.balance(), point.spark.retard), 0, 1e-5);
    // A little more throttle would not hold it.
    engine.spark.policy = engine::SparkPolicy::hold_margin;
    PointSolver wider(car);
    EXPECT_EQ(wider.at({3000 * rpm, 0, point.condition.opening + 0.01}).outcome.status,
              Status::knock_limited);
}

// Derived: the requirement rises with temperature at fixed pressure, so at the wide-open point of
// an engine with its spark as given the margin falls when only the charge is made hotter.
TEST(OperatingPoint, HotterChargeNeverMoreMargin) {
    Vehicle car = sample::cyclecar();
    car.engine.as<engine::Cylinder>()->spark.policy = engine::SparkPolicy::as_given;
    double last = 1e9;
    for (double hotter : {-20.0, 0.0, 20.0, 60.0}) {
        PointSolver solver(car, {1, hotter});
        const auto point = solver.at({4000 * rpm, 0, 1});
        const auto intake = solver.balance().intake(solver.balance().manifold());
        auto held = intake;
        held.charge.pressure = 110e3;
        const double margin =
            car.engine.as<engine::Cylinder>()->choose_spark(held, car.fuel).margin;
        ASSERT_TRUE(point.outcome.answered());
        EXPECT_LT(margin, last);
        last = margin;
    }
}

TEST(OperatingPoint, MoreOctaneNeverLessMargin) {
    Vehicle car = sample::cyclecar();
    car.engine.as<engine::Cylinder>()->spark.policy = engine::SparkPolicy::as_given;
    double last = -1e9;
    for (double research : {88.0, 92.0, 98.0, 105.0}) {
        car.fuel.research_octane = research;
        PointSolver solver(car);
        const double margin = solver.at({4000 * rpm, 0, 1}).spark.margin;
        EXPECT_GE(margin, last);
        last = margin;
    }
}

// A plate can only take pressure away: the largest throttle gives at most the torque of none.
TEST(OperatingPoint, BiggerThrottleNeverGainsMoreThanNone) {
    Vehicle without = sample::cyclecar();
    without.charge_path.erase(without.charge_path.begin() + 1);
    auto torque = [](const Vehicle& car) {
        PointSolver solver(car);
        return solver.at({5500 * rpm, 0, 1}).work.torque();
    };
    double last = 0;
    for (double bore : {24e-3, 30e-3, 36e-3, 46e-3, 80e-3, 119e-3}) {
        Vehicle car = sample::cyclecar();
        car.charge_path[1].part = sample::throttle(bore);
        EXPECT_GT(torque(car), last);
        last = torque(car);
    }
    EXPECT_LE(last, torque(without));
}

}  // namespace
}  // namespace windwall::solve
