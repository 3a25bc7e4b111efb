// A hole in the charge path, from the balance's side.
#include "windwall/charge/leak.hpp"

#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/point/point.hpp"
#include "windwall/solve/results/account.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

charge::Leak hole(double area) {
    charge::Leak made;
    made.area = area;
    return made;
}

/// A blown twin with a hole behind its blower, or wherever else.
Vehicle leaking(double area, std::ptrdiff_t at = 3) {
    Vehicle car = sample::cyclecar();
    car.charge_path.insert(car.charge_path.begin() + at, {"hole", hole(area)});
    return car;
}

Point at(const Vehicle& car, double opening = 1) {
    return PointSolver(car).at({4200 * rpm, 20, opening});
}

TEST(LeakInThePath, TakesBoostAndTorqueAndMoreTheLargerItIs) {
    double last = at(sample::cyclecar()).torque;
    EXPECT_NEAR(at(leaking(0)).torque, last, 1e-9 * last);
    for (const double area : {5e-6, 20e-6, 80e-6, 300e-6, 1200e-6}) {
        const Point point = at(leaking(area));
        ASSERT_TRUE(point.outcome.answered()) << area;
        EXPECT_LT(point.torque, last) << area;
        last = point.torque;
    }
    // A hose off leaves little but what the weather gives.
    PointSolver open(leaking(1200e-6));
    open.at({4200 * rpm, 20, 1});
    EXPECT_NEAR(open.balance().manifold().pressure, 98.4e3, 3e3);
}

TEST(LeakInThePath, DrawsInAheadOfTheBlower) {
    const Vehicle car = leaking(20e-6, 2);
    const PointResult answer = answer_point(car, {4200 * rpm, 20, 0.3});
    ASSERT_TRUE(answer.ending.answered);
    const auto found = std::ranges::find(answer.cautions, CautionKind::false_air, &Caution::about);
    ASSERT_NE(found, answer.cautions.end());
    EXPECT_EQ(found->address, "charge_path/hole/lost");
    EXPECT_GT(*found->found, 1e-3);
}

TEST(LeakInThePath, IsWarnedOfWithWhatLeaves) {
    const PointResult answer = answer_point(leaking(20e-6), {4200 * rpm, 20, 1});
    const auto found = std::ranges::find(answer.cautions, CautionKind::leak, &Caution::about);
    ASSERT_NE(found, answer.cautions.end());
    const auto* part = answer.point->charge_path[3].part.as<LeakedResult>();
    ASSERT_TRUE(part);
    EXPECT_NEAR(*found->found, part->lost, 1e-12);
    EXPECT_NEAR(part->lost, part->inlet.flow - part->outlet.flow, 1e-15);
    const PointResult tight = answer_point(leaking(0), {4200 * rpm, 20, 1});
    EXPECT_EQ(std::ranges::count(tight.cautions, CautionKind::leak, &Caution::about), 0);
}

TEST(LeakInThePath, LeansWhatACarburettorMixed) {
    const auto lambda = [](double area) {
        charge::Carburettor carburettor;
        carburettor.venturi = 30e-3;
        Vehicle car = leaking(area, 2);
        car.charge_path.insert(car.charge_path.begin() + 1, {"carburettor", carburettor});
        return answer_point(car, {4200 * rpm, 20, 0.3}).point->engine.lambda;
    };
    EXPECT_GT(lambda(20e-6), 1.05 * lambda(0));
}

TEST(LeakInThePath, IsPassedThroughWithoutAStepWhereNothingFlows) {
    const Vehicle car = leaking(40e-6);
    double last = -1;
    for (double opening = 0.2; opening <= 0.6; opening += 0.004) {
        const Point point = at(car, opening);
        ASSERT_TRUE(point.outcome.answered()) << opening;
        if (last >= 0) {
            EXPECT_LT(std::abs(point.torque - last), 3.0) << opening;
        }
        last = point.torque;
    }
}

TEST(LeakInThePath, KeepsTheHeatAccount) {
    for (Vehicle car : {leaking(40e-6), leaking(40e-6, 2)}) {
        VehicleSolver solver(car);
        for (const double speed : {3000 * rpm, 4500 * rpm}) {
            const FullThrottlePoint there = solver.at({speed, 2});
            ASSERT_TRUE(there.point.outcome.answered());
            const Account account = heat_account(solver.point_solver().balance(), there).account;
            EXPECT_NEAR(account.gap(), 0, 1e-9 * account.total.watts);
        }
    }
}

TEST(LeakInThePath, MayLieOnTheWayRoundABypass) {
    Vehicle car = leaking(20e-6);
    charge::Bypass bypass;
    bypass.area = 60e-6;
    bypass.opened_by = charge::OpenedBy::hand;
    bypass.hand_opening = 0.7;
    car.charge_path.insert(car.charge_path.begin() + 4, {"bypass", bypass});
    const Point point = at(car);
    ASSERT_TRUE(point.outcome.answered());
    EXPECT_LT(point.torque, at(leaking(20e-6)).torque);
}

}  // namespace
}  // namespace windwall::solve
