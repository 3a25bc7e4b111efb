// A pump that a pressure switches, wherever on the path its switch reads.
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/point/point.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <utility>

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

// From a closed pedal or a low engine speed to where the switch is met, one point after another.
TEST(PumpSwitch, IsMetByPedalAndEngineSpeedWithoutAStep) {
    charge::EvaporativeInjection spray = nozzle(20e-6 / 60);
    spray.trigger.pedal_above = 0.6;
    const Vehicle car = spraying(spray);
    double last = 0;
    for (double opening = 0.59; opening < 0.63; opening += 1e-3) {
        const Found here = found(car, opening);
        ASSERT_TRUE(here.outcome.answered()) << opening;
        EXPECT_GE(here.spray.running, last);
        EXPECT_LT(here.spray.running - last, 0.12);
        last = here.spray.running;
    }
    EXPECT_EQ(found(car, 0.6).spray.running, 0);
    EXPECT_EQ(last, 1);
    spray.trigger.engine_speed_above = 4200 * rpm;
    EXPECT_EQ(found(spraying(spray)).spray.running, 0);
    spray.trigger.engine_speed_above = 4150 * rpm;
    EXPECT_NEAR(found(spraying(spray)).spray.running, 0.5, 1e-9);
}

// The spray moves the charge that asks for it by the air that it lets in; it still settles.
TEST(PumpSwitch, IsMetByTheChargeBeforeTheNozzle) {
    Vehicle car = sample::cyclecar();
    car.charge_path.push_back({"jet", nozzle()});
    auto& jet = *car.charge_path.back().part.as<charge::EvaporativeInjection>();
    const auto met = [&] {
        PointSolver solver(car);
        EXPECT_TRUE(solver.at({4200 * rpm, 20, 1}).outcome.answered());
        const vehicle::Station& here = solver.balance().stations().back();
        return std::pair{here.inlet.temperature,
                         jet.spray(here.inlet, solver.balance().surroundings_of(here)).running};
    };
    const double hot = met().first;
    double last = 1;
    for (double off = -4; off < 4; off += 0.5) {
        jet.trigger.charge_temperature_above = hot + off;
        const auto [temperature, running] = met();
        const double inside = std::clamp((temperature - hot - off) / 2, 0.0, 1.0);
        EXPECT_NEAR(running, inside * inside * (3 - 2 * inside), 1e-12) << off;
        EXPECT_LE(running, last + 1e-9);
        last = running;
    }
    EXPECT_EQ(last, 0);
}

// What a cut takes off the engine's own fuel follows the pump, in place of the trim.
TEST(PumpSwitch, CutsTheEnginesOwnFuelWhileItRuns) {
    charge::EvaporativeInjection spray = nozzle(60e-6 / 60);
    spray.starts_at = 5e3;
    const auto lambda = [&](double opening = 1) {
        Vehicle car = spraying(spray);
        car.engine.as<engine::Cylinder>()->spark.richest = 1;  // none against knock
        PointSolver solver(car);
        const Point point = solver.at({4200 * rpm, 20, opening});
        EXPECT_TRUE(point.outcome.answered());
        return point.work.lambda;
    };
    const double asked = lambda();
    spray.fuel_cut = 0;
    EXPECT_NEAR(lambda(), asked, 1e-9);  // water burns with nothing
    spray.fuel_cut = 0.1;
    EXPECT_NEAR(lambda(), asked / 0.9, 1e-9);
    EXPECT_NEAR(lambda(0.25), asked, 1e-9);  // the pump rests
    spray.methanol = 1;
    const double cut = lambda();
    spray.fuel_cut = 0;
    EXPECT_LT(lambda(), 0.97 * asked);  // and petrol flows as before
    EXPECT_LT(lambda(), cut);
    spray.fuel_cut.reset();
    EXPECT_NEAR(lambda(), asked, 1e-9);
}

TEST(PumpSwitch, TakesNothingOfWhatACarburettorMeters) {
    charge::EvaporativeInjection spray = nozzle();
    Vehicle car = spraying(spray);
    charge::Carburettor carburettor;
    carburettor.venturi = 0.03;
    car.charge_path.insert(car.charge_path.begin() + 1, {"bowl", carburettor});
    EXPECT_FALSE(car.check());
    car.charge_path[3].part.as<charge::EvaporativeInjection>()->fuel_cut = 0.1;
    ASSERT_TRUE(car.check());
    EXPECT_NE(car.check()->sentence.find("\"jet/fuel_cut\""), std::string::npos);
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

TEST(PumpSwitch, IsWarnedOfWhereNoPressureButATriggerKeepsItOff) {
    charge::EvaporativeInjection spray = nozzle();
    spray.starts_at = 5e3;
    spray.trigger.engine_speed_above = 15000 * rpm;
    const auto off = answer_speed(spraying(spray), {}).cautions;
    EXPECT_TRUE(about(CautionKind::untriggered_pump, off));
    EXPECT_FALSE(about(CautionKind::idle_pump, off));
    spray.trigger.engine_speed_above = 2000 * rpm;
    EXPECT_FALSE(about(CautionKind::untriggered_pump, answer_speed(spraying(spray), {}).cautions));
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
