// A belt drive by what its builder knows: one held speed, a line between two, or weights and
// springs.
#include "windwall/driveline/launch.hpp"
#include "windwall/solve/answer/answer.hpp"
#include "windwall/solve/answer/belt_cautions.hpp"
#include "windwall/solve/answer/cautions.hpp"
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/answer/flyweights.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/full_throttle/gear_range.hpp"
#include "windwall/solve/full_throttle/run_up.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::belt_driven;
using sample::rpm;
using vehicle::Vehicle;

driveline::BeltCvt& belt_of(Vehicle& car) {
    return *car.driveline[0].part.as<driveline::BeltCvt>();
}

/// Shifts from 3800 rpm at its lowest gearing to 4600 at its highest.
Vehicle along_a_line() {
    Vehicle car = belt_driven();
    belt_of(car).shift_speed = 3800 * rpm;
    belt_of(car).shift_end_speed = 4600 * rpm;
    return car;
}

/// The same belt with weights, springs and cam.
Vehicle weighted(double reduction = 5) {
    Vehicle car = belt_driven(sample::cyclecar(), reduction);
    driveline::BeltCvt& belt = belt_of(car);
    belt.shift_speed.reset();
    belt.engagement_speed.reset();
    belt.sheaves.emplace();
    belt.sheaves->centre_distance = 0.27;
    belt.sheaves->belt_length = 1.0;
    belt.sheaves->friction = 0.5;
    belt.flyweights = {3, 0.18, 0.05, 0.6, {}, 400, 25e3};
    belt.torque_cam = {500, 25e3, 0, 0.05, 35 * std::numbers::pi / 180, 0.5};
    return car;
}

bool warns(const std::vector<Caution>& cautions, CautionKind about) {
    return std::ranges::count(cautions, about, &Caution::about) > 0;
}

}  // namespace

TEST(GearRange, RisesWhileItShiftsAlongALine) {
    const GearRange range(along_a_line(), 0);
    ASSERT_EQ(range.segments(), 3u);
    EXPECT_NEAR(range.at(1).engine_speed, 3800 * rpm, 1e-9);
    EXPECT_NEAR(range.at(1.25).engine_speed, 4000 * rpm, 1e-9);
    EXPECT_NEAR(range.at(1.25).gear_state.position, 0.25, 1e-12);
    EXPECT_NEAR(range.at(2).engine_speed, 4600 * rpm, 1e-9);
    EXPECT_EQ(range.at(2).gear_state.position, 1);
    EXPECT_EQ(range.crank_share(0.5), 1);
    EXPECT_EQ(range.crank_share(2.5), 1);
    const auto in_the_middle = range.states_at(4200 * rpm);
    ASSERT_EQ(in_the_middle.size(), 1u);
    EXPECT_NEAR(in_the_middle.front().position, 0.5, 1e-9);
    EXPECT_EQ(range.states_at(3000 * rpm).front().position, 0);
    EXPECT_EQ(range.states_at(6000 * rpm).front().position, 1);
    EXPECT_EQ(GearRange(belt_driven(), 0).states_at(4200 * rpm).size(), 3u);
}

TEST(GearRange, IsTheHeldOneWhereBothEndsAreOneSpeed) {
    Vehicle held = belt_driven(), line = belt_driven();
    belt_of(line).shift_end_speed = belt_of(line).shift_speed;
    EXPECT_EQ(top_speed(held).equilibrium.road_speed, top_speed(line).equilibrium.road_speed);
    EXPECT_EQ(top_speed(held).run_up->time, top_speed(line).run_up->time);
}

TEST(GearRange, EndsWhereItsLineAsksForMoreThanTheLimit) {
    Vehicle car = along_a_line();
    belt_of(car).shift_end_speed = 7000 * rpm;  // the limit is 6200
    const GearRange range(car, 0);
    ASSERT_EQ(range.segments(), 2u);
    EXPECT_NEAR(range.at(2).engine_speed, 6200 * rpm, 1e-9);
    EXPECT_NEAR(range.at(2).gear_state.position, 2400.0 / 3200, 1e-9);
    belt_of(car).shift_speed = 6500 * rpm;
    EXPECT_EQ(GearRange(car, 0).segments(), 1u);
    EXPECT_EQ(GearRange(car, 0).at(1).gear_state.position, 0);
}

// The thrust pays for the crank as well as for the vehicle: m v dv + J w dw, with w over v by
// differences along the shift.
TEST(BeltDrive, AcceleratesTheCrankAlongItsLine) {
    Vehicle car = along_a_line();
    VehicleSolver solver(car);
    const GearRange& range = solver.gear_range(0);
    const double radius = car.tyres.rolling_radius();
    const auto speed_at = [&](double along) {
        const DrivelineState state = range.at(along);
        return radius * state.engine_speed /
               driveline::total_ratio(car.driveline, state.gear_state);
    };
    for (const double along : {1.1, 1.5, 1.9}) {
        const double h = 1e-5;
        const double slope = (range.at(along + h).engine_speed - range.at(along - h).engine_speed) /
                             (speed_at(along + h) - speed_at(along - h));
        const auto state = range.at(along).gear_state;
        const auto mass = [&](driveline::Behind behind) {
            return vehicle::accelerated_mass(car, state, radius, behind);
        };
        const double ratio = driveline::total_ratio(car.driveline, state);
        const double with_crank =
            (mass(driveline::Behind::crank) - mass(driveline::Behind::variator)) * radius * radius /
            (ratio * ratio);
        const double expected = mass(driveline::Behind::variator) +
                                with_crank * range.at(along).engine_speed * slope / speed_at(along);
        EXPECT_NEAR(solver.accelerated_mass_at(0, along), expected, 1e-4 * expected);
        EXPECT_GT(expected, 1.001 * mass(driveline::Behind::variator));
    }
    const auto engine = FullLoadCurve(solver);
    const TractiveEffortCurve curve(engine, solver, 0);
    const CurvePoint middle = read(engine, solver, 0, 1.5);
    EXPECT_NEAR(curve.accelerated_mass(middle.road_speed), solver.accelerated_mass_at(0, 1.5),
                1e-3 * solver.accelerated_mass_at(0, 1.5));
}

// Where weights and springs hold it, they hold it at the torque that is solved there.
TEST(BeltDrive, IsHeldWhereItsForcesBalanceAtFullThrottle) {
    const Vehicle car = weighted();
    ASSERT_FALSE(car.driveline[0].part.as<driveline::BeltCvt>()->check());
    VehicleSolver solver(car);
    const FullLoadCurve engine(solver);
    const GearRange& range = solver.gear_range(0);
    ASSERT_EQ(range.segments(), 3u);
    const auto variator = driveline::variator(car.driveline);
    for (const double along : {1.0, 1.2, 1.5, 1.8, 2.0}) {
        const DrivelineState state = range.at(along);
        const double torque = solver.at(state).point.torque;
        EXPECT_NEAR(variator->held_speed(state.gear_state.position, torque), state.engine_speed,
                    3e-4 * state.engine_speed);
    }
    EXPECT_GT(range.at(2).engine_speed, 1.01 * range.at(1).engine_speed);
}

TEST(BeltDrive, WithMoreWeightTurnsItsEngineSlower) {
    double before = 1e9;
    for (const double mass : {0.15, 0.18, 0.22}) {
        Vehicle car = weighted(2.8);
        belt_of(car).flyweights->weight_mass = mass;
        const TopSpeed found = top_speed(car);
        ASSERT_TRUE(found.outcome.answered());
        const FullThrottlePoint& end = *found.equilibrium.full_throttle;
        EXPECT_GT(end.position, 0);
        EXPECT_LT(end.position, 1);
        EXPECT_LT(end.point.condition.engine_speed, before);
        before = end.point.condition.engine_speed;
        EXPECT_NEAR(end.excess_force(), 0, 1e-3);
        EXPECT_NEAR(driveline::variator(car.driveline)->held_speed(end.position, end.point.torque),
                    before, 3e-4 * before);
    }
}

// Speed, thrust and mass rise and fall along each piece without a step at the ends of the shift.
TEST(BeltDrive, HasNoStepWhereItBeginsAndEndsToShift) {
    for (const Vehicle& car : {along_a_line(), weighted()}) {
        VehicleSolver solver(car);
        const FullLoadCurve engine(solver);
        for (const double along : {1.0, 2.0}) {
            const CurvePoint before = read(engine, solver, 0, along - 1e-6);
            const CurvePoint behind = read(engine, solver, 0, along + 1e-6);
            EXPECT_NEAR(behind.thrust / before.thrust, 1, 1e-4);
            EXPECT_NEAR(behind.road_speed / before.road_speed, 1, 1e-4);
            EXPECT_GT(behind.road_speed, before.road_speed);
        }
    }
}

TEST(BeltDrive, IsFittedToTheSpeedsThatAreWanted) {
    Vehicle car = weighted();
    const FlyweightFit fit = answer_flyweights(car, {3600 * rpm, 4800 * rpm, 2200 * rpm});
    ASSERT_TRUE(fit.ending.answered);
    ASSERT_TRUE(fit.spring_rate);
    driveline::Flyweights& made = *belt_of(car).flyweights;
    made.weight_mass = fit.weight_mass;
    made.spring_preload = fit.spring_preload;
    made.spring_rate = *fit.spring_rate;
    VehicleSolver solver(car);
    const FullLoadCurve engine(solver);
    EXPECT_NEAR(solver.gear_range(0).at(1).engine_speed, 3600 * rpm, 0.2 * rpm * 10);
    EXPECT_NEAR(solver.gear_range(0).at(2).engine_speed, 4800 * rpm, 0.2 * rpm * 10);
    EXPECT_NEAR(belt_of(car).forces()->engagement_speed(), 2200 * rpm, 1e-9);
    EXPECT_FALSE(answer_flyweights(car, {3600 * rpm, {}, {}}).spring_rate);
    EXPECT_FALSE(has_flyweights(along_a_line()));
}

TEST(BeltDrive, WarnsOfWhatItNeverReaches) {
    Vehicle car = weighted();
    EXPECT_FALSE(warns(belt_cautions(top_speed(car), car), CautionKind::short_travel));
    EXPECT_FALSE(warns(belt_cautions(top_speed(car), car), CautionKind::unshifted));
    belt_of(car).sheaves->travel = 0.010;
    EXPECT_TRUE(warns(belt_cautions(top_speed(car), car), CautionKind::short_travel));
    Vehicle light = weighted();
    belt_of(light).flyweights->weight_mass = 0.045;
    EXPECT_TRUE(warns(belt_cautions(top_speed(light), light), CautionKind::unshifted));
    EXPECT_FALSE(warns(belt_cautions(top_speed(car), car), CautionKind::early_grip));
    Vehicle soft = weighted();
    belt_of(soft).flyweights->spring_preload = 20;
    EXPECT_TRUE(warns(belt_cautions(top_speed(soft), soft), CautionKind::early_grip));
}

// At the start it slips until its weights clamp it: that is no fault. Where it slips later it is.
TEST(BeltDrive, WarnsOfABeltThatSlips) {
    Vehicle car = weighted();
    EXPECT_TRUE(slip_cautions(top_speed(car), car).empty());
    belt_of(car).sheaves->friction = 0.15;
    EXPECT_TRUE(warns(slip_cautions(top_speed(car), car), CautionKind::slip));
}

TEST(BeltDrive, KnowsWhereItsBeltGlazes) {
    Vehicle car = weighted();
    TopSpeedResult found = answer_speed(car, {});
    const auto& belt = found.point->variator;
    ASSERT_TRUE(belt);
    EXPECT_GT(belt->temperature, car.day.temperature + 20);
    EXPECT_GT(belt->clamp_force.value(), 100);
    // Where its maker says nothing it has the limit of its class.
    EXPECT_EQ(std::ranges::count(found.unrated, "variator/temperature"), 0);
    const auto limits = built_in_limits(car);
    const auto own = std::ranges::find(limits, "variator/temperature", &Limit::address);
    ASSERT_NE(own, limits.end());
    EXPECT_NEAR(own->max.value(), 273.15 + 110, 1e-9);
    belt_of(car).glaze_temperature = car.day.temperature + 10;
    found = answer_speed(car, {});
    EXPECT_EQ(std::ranges::count(found.unrated, "variator/temperature"), 0);
    EXPECT_EQ(std::ranges::count(found.passed, "variator/temperature", &LimitViolation::address),
              1);
}

// Its heat and that of the air around it: what it loses, over what the air takes for a kelvin.
TEST(BeltDrive, WarmsItsBeltByWhatItLoses) {
    const Vehicle car = weighted();
    VehicleSolver solver(car);
    const FullThrottlePoint point = solver.at({4000 * rpm, {0, 0.5}});
    OperatingPoint told;
    describe(solver.point_solver().balance(), point, told);
    const auto& belt = *car.driveline[0].part.as<driveline::BeltCvt>();
    const double power = point.point.torque * 4000 * rpm;
    const double air = solver.point_solver().balance().surroundings().under_hood_temperature;
    EXPECT_NEAR(told.variator->temperature - air,
                power * (1 - told.variator->efficiency) / belt.to_air, 0.5);
    EXPECT_NEAR(told.variator->ratio, std::sqrt(2.8 * 0.8), 1e-12);
}

// A belt drive, a box of two speeds and a chain are one train: it may set out in the high gear, on
// the belt's lowest gearing, and shift on through the belt.
TEST(BeltDrive, StartsInAHighGearThroughBoxAndChain) {
    for (Vehicle car : {along_a_line(), weighted()}) {
        driveline::Gearbox box;
        box.ratios = {1.9, 1.0};
        driveline::Chain chain;
        chain.teeth_front = 15;
        chain.teeth_rear = 60;
        car.driveline = {car.driveline[0], {"box", box}, {"chain", chain}};
        const TopSpeed found = top_speed(car);
        ASSERT_TRUE(found.outcome.answered());
        EXPECT_EQ(found.curves.size(), 2u);
        EXPECT_NEAR(found.curves[0].samples()[5].road_speed * 1.9,
                    found.curves[1].samples()[5].road_speed,
                    0.05 * found.curves[1].samples()[5].road_speed);
        VehicleSolver solver(car);
        const FullLoadCurve engine(solver);
        auto curves = tractive_effort_curves(engine, solver);
        const double summit = found.equilibrium.road_speed;
        const RunUp low = run_up(solver, curves, 0, summit, 400);
        const RunUp high = run_up(solver, curves, 1, summit, 400);
        EXPECT_EQ(low.start_gear, 1);
        EXPECT_EQ(high.start_gear, 2);
        EXPECT_GT(high.time, low.time);
        EXPECT_LT(high.time, 3 * low.time);
    }
}

TEST(BeltDrive, TellsItsCurveWithTheSpeedsItHolds) {
    const Vehicle car = weighted();
    const Curve curve = full_throttle_curve(car, 0, 31);
    const auto column = [&](std::string_view address) -> const std::vector<double>& {
        const auto found = std::ranges::find(curve.addresses, address);
        return curve.columns[static_cast<std::size_t>(found - curve.addresses.begin())];
    };
    EXPECT_TRUE(std::ranges::is_sorted(column("road/speed")));
    const auto variator = driveline::variator(car.driveline);
    for (std::size_t i = 10; i <= 20; ++i) {
        const double position = variator->position_of(column("variator/ratio")[i]);
        const double held = variator->held_speed(position, column("engine/torque")[i]);
        EXPECT_NEAR(column("engine/speed")[i], held, 3e-4 * held);
    }
}

// Over time as over the steady chain: the engine stays where its position holds it, what it gives
// its own crank meanwhile is paid for, and the belt warms from the air's temperature on.
TEST(BeltDrive, IsDrivenOverTime) {
    for (const Vehicle& car : {along_a_line(), weighted()}) {
        vehicle::Outing outing;
        outing.id = "run";
        vehicle::FullThrottle leg;
        leg.for_distance = 300;
        outing.legs = {leg};
        const DriveResult run = drive(car, outing);
        ASSERT_EQ(run.end, DriveEnd::legs_done);
        double left = run.energy[static_cast<std::size_t>(Energy::crank)];
        const double size = left;
        for (const Energy entry : {Energy::driveline, Energy::clutch, Energy::tyres, Energy::air,
                                   Energy::rolling, Energy::grade, Energy::brakes})
            left -= run.energy[static_cast<std::size_t>(entry)];
        EXPECT_NEAR(left - (run.kinetic_after - run.kinetic_before) - run.changed, 0, 1e-6 * size);
        EXPECT_EQ(std::ranges::count(run.events, Happening::ratio_begins, &DriveEvent::what), 1);
        const auto column = [&](std::string_view address) -> const std::vector<double>& {
            const auto found = std::ranges::find(run.addresses, address);
            return run.columns[static_cast<std::size_t>(found - run.addresses.begin())];
        };
        const auto variator = driveline::variator(car.driveline);
        int shifting = 0;
        for (std::size_t i = 0; i < column("position").size(); ++i) {
            const double position = column("position")[i];
            if (position <= 0 || position >= 1) continue;
            const double held = variator->held_speed(position, column("engine/torque")[i]);
            EXPECT_NEAR(column("engine/speed")[i], held, 0.02 * held);
            ++shifting;
        }
        EXPECT_GT(shifting, 3);
        const auto& temperature = column("variator/temperature");
        EXPECT_GT(temperature.back(), temperature.front() + 1);
        EXPECT_LT(temperature.back(), answer_speed(car, {}).point->variator->temperature);
    }
}

}  // namespace windwall::solve
