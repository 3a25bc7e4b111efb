// A pump that a pressure switches, wherever on the path its switch reads.
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/point/point.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

charge::EvaporativeInjection nozzle(double flow = 150e-6 / 60) {
    charge::EvaporativeInjection made;
    made.rated_flow = flow;
    made.pump_pressure = 8e5;
    return made;
}

/// A blown twin that sprays ahead of its blower.
Vehicle spraying(const charge::EvaporativeInjection& spray) {
    Vehicle car = sample::cyclecar();
    car.charge_path.insert(car.charge_path.begin() + 2, {"jet", spray});
    return car;
}

struct Found {
    Outcome outcome;
    charge::Spray spray;
    double manifold{};  // Pa
    double sensed{};    // Pa
    double torque{};
};

Found found(const Vehicle& car, double opening = 1) {
    PointSolver solver(car);
    const Point point = solver.at({4200 * rpm, 20, opening});
    const vehicle::Balance& balance = solver.balance();
    const vehicle::Station& station = balance.stations()[2];
    const auto& jet = *car.charge_path[2].part.as<charge::EvaporativeInjection>();
    return {point.outcome, jet.spray(station.inlet, balance.surroundings_of(station)),
            balance.manifold().pressure, station.sensed_pressure, point.torque};
}

TEST(PumpSwitch, ReadsTheManifoldFromAheadOfTheBlower) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at = 5e3;
    const Found open = found(spraying(spray));
    ASSERT_TRUE(open.outcome.answered());
    EXPECT_NEAR(open.sensed, open.manifold, 1e-5);
    EXPECT_EQ(open.spray.running, 1);
    EXPECT_GT(open.spray.flow, 0);
    const Found lifted = found(spraying(spray), 0.25);
    ASSERT_TRUE(lifted.outcome.answered());
    EXPECT_NEAR(lifted.sensed, lifted.manifold, 1e-5);
    EXPECT_EQ(lifted.spray.flow, 0);
}

TEST(PumpSwitch, ReadsBehindThePartThatIsNamed) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at = 0;
    spray.starts_where = "throttle";
    EXPECT_EQ(found(spraying(spray)).spray.running, 0);  // vacuum there
    spray.starts_where = "jet";
    EXPECT_EQ(found(spraying(spray)).spray.running, 0);
    spray.starts_where = "blower";
    EXPECT_EQ(found(spraying(spray)).spray.running, 1);
}

TEST(PumpSwitch, CountsFromVacuumOrFromTheDay) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at_absolute = 98.4e3 + 10e3;
    const Found absolute = found(spraying(spray));
    spray.starts_at_absolute.reset();
    spray.starts_at = 10e3;
    EXPECT_NEAR(absolute.torque, found(spraying(spray)).torque, 1e-7);
}

TEST(PumpSwitch, RunsInWithoutAStep) {
    // More of it would raise the boost that starts it, by the room that its vapour takes.
    charge::EvaporativeInjection spray = nozzle(20e-6 / 60);
    spray.starts_at = 0;
    Vehicle car = spraying(spray);
    auto& jet = *car.charge_path[2].part.as<charge::EvaporativeInjection>();
    const double boost = found(car).manifold - 98.4e3;
    double last = -1, least = 1, most = 0;
    for (double off = -8e3; off <= 8e3; off += 250) {
        jet.starts_at = boost + off;
        const Found here = found(car);
        ASSERT_TRUE(here.outcome.answered()) << off;
        if (last >= 0) {
            EXPECT_LT(std::abs(here.spray.running - last), 0.12) << off;
        }
        last = here.spray.running;
        least = std::min(least, last);
        most = std::max(most, last);
    }
    EXPECT_EQ(least, 0);
    EXPECT_EQ(most, 1);
}

TEST(PumpSwitch, IsRefusedWhereNothingStands) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at = 0;
    spray.starts_where = "blowr";
    const auto broken = spraying(spray).check();
    ASSERT_TRUE(broken);
    EXPECT_EQ(broken->key, "charge_path");
    EXPECT_NE(broken->sentence.find("\"jet/starts_where\" names \"blowr\""), std::string::npos);
    EXPECT_NE(broken->sentence.find("did you mean \"blower\"?"), std::string::npos);
}

const Caution* about(CautionKind kind, const std::vector<Caution>& cautions) {
    const auto it = std::ranges::find(cautions, kind, &Caution::about);
    return it == cautions.end() ? nullptr : &*it;
}

TEST(PumpSwitch, IsWarnedOfWhereItNeverRuns) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at = 150e3;
    const TopSpeedResult idle = answer_speed(spraying(spray), {});
    const Caution* caution = about(CautionKind::idle_pump, idle.cautions);
    ASSERT_TRUE(caution);
    EXPECT_EQ(caution->address, "charge_path/jet/liquid_flow");
    EXPECT_NEAR(*caution->found, 150e3 - idle.point->manifold.boost, 15e3);
    spray.starts_at = 10e3;
    EXPECT_FALSE(about(CautionKind::idle_pump, answer_speed(spraying(spray), {}).cautions));
    spray.starts_at.reset();
    EXPECT_FALSE(about(CautionKind::idle_pump, answer_speed(spraying(spray), {}).cautions));
}

TEST(PumpSwitch, IsNamedWhereItDrownsTheLaunch) {
    const TopSpeedResult drowned = answer_speed(spraying(nozzle(3000e-6 / 60)), {});
    EXPECT_FALSE(drowned.ending.answered);
    const Caution* caution = about(CautionKind::drowned, drowned.cautions);
    ASSERT_TRUE(caution);
    EXPECT_GT(*caution->found, 0.2);
    EXPECT_GT(*caution->engine_speed, 1000 * rpm);
    EXPECT_FALSE(
        about(CautionKind::drowned, answer_speed(spraying(nozzle(40e-6 / 60)), {}).cautions));
}

TEST(PumpSwitch, IsWarnedOfWhereTheThrottleThatHoldsOffKnockStopsIt) {
    charge::EvaporativeInjection spray = nozzle();
    Vehicle car = spraying(spray);
    car.engine.as<engine::Cylinder>()->spark.most_retard = 0.02;
    car.engine.as<engine::Cylinder>()->spark.richest = 1;
    auto& jet = *car.charge_path[2].part.as<charge::EvaporativeInjection>();
    jet.starts_at = 40e3;
    const PointResult held = answer_point(car, {4200 * rpm, 20, 1});
    ASSERT_EQ(held.ending.status, Status::knock_limited);
    EXPECT_EQ(held.opening, 1);                // as asked
    EXPECT_LT(held.point->engine.opening, 1);  // as held
    const Caution* caution = about(CautionKind::throttled_spray, held.cautions);
    ASSERT_TRUE(caution);
    EXPECT_LT(*caution->found, 1);
}

}  // namespace
}  // namespace windwall::solve
