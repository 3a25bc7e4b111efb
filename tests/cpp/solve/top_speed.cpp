#include "windwall/solve/full_throttle/top_speed.hpp"

#include "windwall/solve/results/account.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;
using vehicle::Vehicle;

constexpr double gravity = 9.80665;

double speed(const Vehicle& car) {
    const TopSpeed found = top_speed(car);
    EXPECT_TRUE(found.outcome.answered());
    return found.speed();
}

FullThrottlePoint solved(VehicleSolver& solver, double engine_speed, std::size_t gear) {
    const FullThrottlePoint full_throttle = solver.at({engine_speed, gear});
    EXPECT_TRUE(full_throttle.point.outcome.answered());
    return full_throttle;
}

double watts(const Account& account, PowerUse use, std::string_view part = "") {
    for (const auto& entry : account.entries) {
        if (entry.use == use && entry.part == part) return entry.watts;
    }
    ADD_FAILURE() << "no entry " << fields::Names<PowerUse>::names[static_cast<std::size_t>(use)];
    return 0;
}

TEST(Accounts, ShaftClosesInEveryGear) {
    for (const Vehicle& car : {sample::cyclecar(), sample::cooled_cyclecar(), sample::unblown()}) {
        VehicleSolver solver(car);
        for (std::size_t gear = 0; gear < solver.gears(); ++gear) {
            const FullThrottlePoint full_throttle = solved(solver, 4500 * rpm, gear);
            const Account account = shaft_account(solver.point_solver().balance(), full_throttle);
            EXPECT_NEAR(account.gap(), 0, 1e-9 * account.total.watts);
        }
    }
}

// An engine that drags more than the clutch holds is slowed down, and pays for it itself.
TEST(Accounts, ShaftClosesWhereAClutchSlipsInOverrun) {
    Vehicle car = sample::cyclecar();
    car.driveline[0].part.as<driveline::Clutch>()->capacity = 5;
    car.engine.as<engine::Cylinder>()->accessories.torque = 120;
    VehicleSolver solver(car);
    const FullThrottlePoint full_throttle = solved(solver, 4500 * rpm, 2);
    ASSERT_LT(full_throttle.point.torque, -5);
    const Account account = shaft_account(solver.point_solver().balance(), full_throttle);
    EXPECT_NEAR(account.gap(), 0, 1e-9 * account.total.watts);
    EXPECT_EQ(watts(account, PowerUse::part, "clutch"), 0);
    EXPECT_NEAR(watts(account, PowerUse::crank_slowing),
                (full_throttle.point.torque + 5) * 4500 * rpm, 1e-9 * account.total.watts);
}

// Each entry against a formula that does not call the part.
TEST(Accounts, EntriesFollowFromTheirOwnFormulas) {
    Vehicle car = sample::cooled_cyclecar();
    car.day.headwind = 2.5;
    car.goal.grade = 0.01;
    VehicleSolver solver(car);
    const FullThrottlePoint full_throttle = solved(solver, 5200 * rpm, 3);
    const vehicle::Balance& balance = solver.point_solver().balance();
    const Account shaft = shaft_account(balance, full_throttle);
    const double v = full_throttle.road_speed;
    const double moist = balance.stations().front().inlet.density();
    EXPECT_NEAR(watts(shaft, PowerUse::air), 0.5 * moist * 0.56 * std::pow(v + 2.5, 2) * v,
                1e-9 * shaft.total.watts);
    const double slope = std::atan(0.01);
    EXPECT_NEAR(watts(shaft, PowerUse::grade), 348 * gravity * std::sin(slope) * v,
                1e-9 * shaft.total.watts);
    EXPECT_NEAR(watts(shaft, PowerUse::rolling), 0.015 * 348 * gravity * std::cos(slope) * v,
                1e-9 * shaft.total.watts);
    const auto& blower = balance.stations()[2];
    const double revolutions = 1.35 * 5200 / 60;
    const double rise = blower.outlet.pressure - blower.inlet.pressure;
    const auto& part = *car.charge_path[2].part.as<charge::PositiveBlower>();
    const double friction = 2 * std::numbers::pi * revolutions *
                            (part.friction_torque +
                             part.friction_torque_per_speed * 2 * std::numbers::pi * revolutions);
    EXPECT_NEAR(watts(shaft, PowerUse::shaft, "blower"), 230e-6 * revolutions * rise + friction,
                1e-9 * shaft.total.watts);
    EXPECT_NEAR(watts(shaft, PowerUse::belt, "blower"),
                (230e-6 * revolutions * rise + friction) * (1 / part.belt_efficiency - 1),
                1e-9 * shaft.total.watts);
    // Pumping and indicated work per cycle are pressures times the swept volume.
    const double swept = 2 * std::numbers::pi / 4 * 0.076 * 0.076 * 0.0688;
    EXPECT_NEAR(watts(shaft, PowerUse::pumping),
                full_throttle.point.work.pumping_mean_pressure * swept * 5200 / 120,
                1e-9 * shaft.total.watts);

    const HeatAccount heat = heat_account(balance, full_throttle);
    EXPECT_NEAR(heat.account.total.watts,
                full_throttle.point.work.fuel_flow * car.fuel.heating_value(),
                1e-9 * heat.account.total.watts);
    const auto& cooler = balance.stations()[3];
    EXPECT_NEAR(watts(heat.account, PowerUse::part, "cooler"),
                cooler.inlet.gas_flow() * (cooler.inlet.gas.enthalpy(cooler.inlet.temperature) -
                                           cooler.inlet.gas.enthalpy(cooler.outlet.temperature)),
                1e-9 * heat.account.total.watts);
    EXPECT_GT(heat.exhaust_temperature, 273.15 + 550);
    EXPECT_LT(heat.exhaust_temperature, 273.15 + 1050);
}

TEST(TopSpeed, BalancesOnTruePoints) {
    const TopSpeed found = top_speed(sample::cooled_cyclecar());
    ASSERT_TRUE(found.outcome.answered());
    ASSERT_EQ(found.equilibrium.stop, StopReason::balance);
    EXPECT_NEAR(found.equilibrium.full_throttle->excess_force(), 0, 1e-5);
    EXPECT_LT(found.run_up->speed, found.equilibrium.road_speed);
}

// More of what holds back at the same thrust can only lower the balance.
TEST(TopSpeed, MoreDragOrMassIsNeverFaster) {
    for (Vehicle car : {sample::cyclecar(), sample::cooled_cyclecar(), sample::unblown()}) {
        const double base = speed(car);
        Vehicle wider = car, heavier = car;
        wider.body.drag_area *= 1.05;
        heavier.body.mass *= 1.05;
        EXPECT_LT(speed(wider), base);
        EXPECT_LT(speed(heavier), base);
    }
}

TEST(TopSpeed, MoreMassIsFasterOnlyWhereGripIsTheReason) {
    Vehicle car = sample::cyclecar();
    car.tyres.grip = 0.12;
    const TopSpeed light = top_speed(car);
    ASSERT_EQ(light.equilibrium.stop, StopReason::grip);
    car.body.mass *= 1.1;
    // Grip grows with mass as fast as rolling does, and drag does not grow.
    EXPECT_GT(top_speed(car).equilibrium.road_speed, light.equilibrium.road_speed);
}

// Derived: without knock, grip and rev limit, power goes with 1/sqrt(T) (filling) and drag with 1/T
// at equal pressure, so where drag dominates v^3 ~ sqrt(T): a hotter day is not slower.
TEST(TopSpeed, HotterDayIsNotSlowerWithoutBoostAndKnock) {
    Vehicle car = sample::unblown();
    car.goal.run_up.reset();
    const double humidity = car.day.humidity_ratio();
    double last = 0;
    for (double temperature : {283.15, 293.15, 303.15, 313.15}) {
        car.day.temperature = temperature;
        // The same humidity ratio on every day.
        car.day.relative_humidity = 0;
        const double dry = car.day.humidity_ratio();
        car.day.relative_humidity = 0.1;
        const double tenth = car.day.humidity_ratio();
        ASSERT_EQ(dry, 0);
        double relative = 0.1 * humidity / tenth;
        for (int i = 0; i < 30; ++i) {
            car.day.relative_humidity = relative;
            relative *= humidity / car.day.humidity_ratio();
        }
        const TopSpeed found = top_speed(car);
        ASSERT_EQ(found.equilibrium.stop, StopReason::balance);
        ASSERT_TRUE(found.equilibrium.full_throttle->grips);
        EXPECT_GE(found.equilibrium.road_speed, last);
        last = found.equilibrium.road_speed;
    }
}

// Two gears with a gap no thrust crosses: the balance far beyond it is not reachable from below.
TEST(TopSpeed, BalanceBehindAGapIsNotReached) {
    Vehicle car = sample::unblown();
    auto& box = *car.driveline[1].part.as<driveline::Gearbox>();
    car.goal.run_up.reset();
    car.engine.as<engine::Cylinder>()->rev_limit = 4000 * rpm;
    box.ratios = {6.0, 0.9};
    car.goal.grade = 0.12;  // low gear full_throttle_points it up the slope, high gear does not
    const TopSpeed found = top_speed(car);
    ASSERT_TRUE(found.outcome.answered());
    EXPECT_EQ(found.equilibrium.stop, StopReason::rev_limit);
    EXPECT_EQ(found.equilibrium.gear, 0u);
}

TEST(TopSpeed, StandstillIsSaid) {
    Vehicle car = sample::unblown();
    car.goal.grade = 0.2;
    car.body.mass = 20000;
    const TopSpeed found = top_speed(car);
    EXPECT_FALSE(found.outcome.answered());
    EXPECT_EQ(found.equilibrium.stop, StopReason::standstill);
}

// Tyres that always slip push with a constant force, and the run has a closed form:
// v(s)^2 = V^2 (1 - exp(-2 c s / m)), V^2 = F/c.
TEST(RunUp, ConstantThrustInClosedForm) {
    Vehicle car = sample::cyclecar();
    car.tyres.grip = 0.03;
    car.body.rolling_resistance = 0;  // its smoothing around standstill has no closed form
    auto& box = *car.driveline[1].part.as<driveline::Gearbox>();
    box.ratios = {3.0};
    car.driveline[0].part.as<driveline::Clutch>()->launch_speed = 600 * rpm;
    // What stands still while the clutch slips, so that one mass is accelerated all the way.
    car.driveline[0].part.as<driveline::Clutch>()->inertia = 0;
    car.engine.as<engine::Cylinder>()->inertia = 0;
    car.charge_path[2].part.as<charge::PositiveBlower>()->rotor_inertia = 0;
    for (double road : {60.0, 300.0, 1600.0}) {
        car.goal.run_up = road;
        VehicleSolver solver(car);
        const TopSpeed found = top_speed(car);
        ASSERT_EQ(found.equilibrium.stop, StopReason::grip);
        const double thrust = found.equilibrium.full_throttle->thrust;
        const double c = 0.5 * solver.point_solver().balance().surroundings().air_density * 0.56;
        const double mass = solver.accelerated_mass(0);
        const double terminal = std::sqrt(thrust / c);
        const double speed = terminal * std::sqrt(1 - std::exp(-2 * c * road / mass));
        EXPECT_NEAR(found.run_up->speed / speed, 1, 1e-6);
        const double time = mass / (c * terminal) * std::atanh(speed / terminal);
        EXPECT_NEAR(found.run_up->time / time, 1, 1e-6);
    }
}

// Each change of gear costs what the road takes meanwhile, and the way back; on its way it goes on.
TEST(RunUp, TakesTimeToShift) {
    Vehicle car = sample::cyclecar();
    car.goal.run_up = 800;
    auto& box = *car.driveline[1].part.as<driveline::Gearbox>();
    const auto run = [&](double shift_time) {
        box.shift_time = shift_time;
        return *top_speed(car).run_up;
    };
    const RunUp none = run(0), usual = run(0.4), slow = run(1.2);
    const auto shifts = static_cast<double>(none.gear - none.start_gear);
    ASSERT_GE(shifts, 2);
    EXPECT_GT(usual.time - none.time, 0.1 * shifts);
    EXPECT_LT(usual.time - none.time, 0.8 * shifts);
    EXPECT_GT(slow.time, usual.time + 0.2 * shifts);
    EXPECT_LT(usual.speed, none.speed);
    EXPECT_LT(slow.speed, usual.speed);
    box.ratios = {1.3};
    EXPECT_EQ(run(0).time, run(1.2).time);
}

TEST(RunUp, LongerRoadNeverSlower) {
    Vehicle car = sample::cyclecar();
    double last = 0;
    for (double road : {100.0, 400.0, 1600.0, 6000.0, 25000.0}) {
        car.goal.run_up = road;
        EXPECT_GT(speed(car), last);
        last = speed(car);
    }
}

// Gears that differ by a rounding push equally hard, and which one pushes hardest is a matter of
// rounding at every speed.
TEST(RunUp, EndsWhereGearsChangeAtEveryStep) {
    Vehicle car = sample::cyclecar();
    auto& box = *car.driveline[1].part.as<driveline::Gearbox>();
    box.ratios = {2.0};
    box.shift_time = 0;
    const double once = speed(car);
    for (double apart : {1e-15, 1e-13, 1e-11, 1e-9}) {
        box.ratios = {2.0 * (1 + 2 * apart), 2.0 * (1 + apart), 2.0};
        EXPECT_NEAR(speed(car) / once, 1, 1e-6);
    }
}

}  // namespace
}  // namespace windwall::solve
