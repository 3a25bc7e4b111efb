#include "windwall/charge/blower_case.hpp"
#include "windwall/charge/blower_point.hpp"
#include "windwall/charge/blower_work.hpp"
#include "windwall/media/orifice.hpp"

#include <gtest/gtest.h>

#include <array>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

constexpr double rpm = std::numbers::pi / 30;

PositiveBlower roots(double leak_area, double friction = 0) {
    PositiveBlower made;
    made.displacement = 220e-6;
    made.drive_ratio = 1.3;
    made.leak_area = leak_area;
    made.friction_torque = friction;
    made.case_conductance = 0;
    made.mount_conductance = 0;
    return made;
}

Surroundings at(double rotor_speed) {
    Surroundings surroundings;
    surroundings.drive_speed = rotor_speed / 1.3;
    return surroundings;
}

}  // namespace

TEST(Blower, TakesTheSamePowerWhateverItLeaksOrBreathes) {
    samples::Dice dice(11);
    const double first =
        roots(0).compress(samples::air(100e3, 300, 0.03), 160e3, at(8000 * rpm)).indicated_power;
    EXPECT_NEAR(first, 220e-6 * 60e3 * 8000 / 60, 1e-9);
    for (int i = 0; i < 200; ++i) {
        auto in = samples::stream(dice);
        in.pressure = 100e3;
        const auto does = roots(dice.between(0, 40e-6)).compress(in, 160e3, at(8000 * rpm));
        EXPECT_DOUBLE_EQ(does.indicated_power, first);
    }
}

TEST(Blower, NeverDeliversMoreForLeakingMore) {
    double before = 1;
    for (double leak = 0; leak < 20e-6; leak += 1e-6) {
        const auto point =
            blower_point(roots(leak), samples::air(100e3, 300, 0), 160e3, 6000 * rpm);
        ASSERT_EQ(point.balance, BlowerBalance::solved);
        EXPECT_LT(point.gas_flow, before);
        before = point.gas_flow;
    }
}

TEST(Blower, LeaksForwardWhenThePressureBehindIsLower) {
    const auto in = samples::air(100e3, 300, 0.03);
    const auto does = roots(10e-6).compress(in, 90e3, at(3000 * rpm));
    // From the inlet's state, not from the outlet's.
    EXPECT_DOUBLE_EQ(does.leak_flow,
                     -media::orifice_flow(10e-6, 100e3, 300, 90e3, 287.05, in.gas.gamma(300)));
    EXPECT_NEAR(does.capacity, in.density() * 220e-6 * 50 - does.leak_flow, 1e-12);
    EXPECT_GT(does.capacity, roots(0).compress(in, 90e3, at(3000 * rpm)).capacity);
    EXPECT_LT(does.indicated_power, 0);
    EXPECT_EQ(roots(10e-6).compress(in, 100e3, at(3000 * rpm)).leak_flow, 0);
}

TEST(Blower, StandsStill) {
    const auto does = roots(10e-6, 0.25).compress(samples::air(100e3, 300, 0), 120e3, at(0));
    EXPECT_EQ(does.shaft_power, 0);
    EXPECT_NEAR(does.outlet.temperature, 300, 1e-9);
    EXPECT_NEAR(does.capacity, -does.leak_flow, 1e-15);
    EXPECT_TRUE(does.capped);
}

TEST(Blower, SplitsItsFriction) {
    auto blower = roots(0, 0.25);
    blower.friction_torque_per_speed = 0.1;
    blower.friction_to_charge = 0.3;
    const auto does = blower.compress(samples::air(100e3, 300, 0.03), 160e3, at(5000 * rpm));
    EXPECT_NEAR(does.friction_power, 5000 * rpm * 0.30, 1e-9);
    EXPECT_NEAR(does.bearing_loss, 0.7 * does.friction_power, 1e-9);
    EXPECT_NEAR(does.heat_to_charge, does.indicated_power + 0.3 * does.friction_power, 1e-9);
}

TEST(Blower, LosesHeatThroughItsCaseToTheAirAround) {
    auto blower = roots(0, 0.25);
    auto surroundings = at(8000 * rpm);
    surroundings.under_hood_temperature = 320;
    const auto in = samples::air(100e3, 300, 0.03);
    const auto whole = blower.compress(in, 160e3, surroundings);
    EXPECT_EQ(whole.casing_loss, 0);
    blower.case_conductance = 3;
    blower.case_to_air = 2;
    const auto cooled = blower.compress(in, 160e3, surroundings);
    const double mean = (300 + cooled.outlet.temperature) / 2;
    EXPECT_NEAR(cooled.casing_loss, 3 * (mean - cooled.case_temperature), 1e-9);
    EXPECT_NEAR(cooled.casing_loss + cooled.bearing_loss, 2 * (cooled.case_temperature - 320),
                1e-9);
    EXPECT_NEAR(whole.outlet.temperature - cooled.outlet.temperature,
                cooled.casing_loss / (0.03 * 1004.675), 1e-9);
    // Hotter air around, a hotter case, a hotter charge.
    surroundings.under_hood_temperature = 360;
    const auto warmer = blower.compress(in, 160e3, surroundings);
    EXPECT_GT(warmer.outlet.temperature, cooled.outlet.temperature);
    blower.case_temperature = 330;
    const auto held = blower.compress(in, 160e3, surroundings);
    EXPECT_EQ(held.case_temperature, 330);
    EXPECT_NEAR(held.casing_loss, 3 * ((300 + held.outlet.temperature) / 2 - 330), 1e-9);
}

// What a warm engine block gives a cool case, and takes from a hot one.
TEST(Blower, SharesTheHeatOfItsCaseWithWhatItIsBoltedTo) {
    auto blower = roots(0, 0.25);
    blower.case_conductance = 3;
    blower.case_to_air = 2;
    auto surroundings = at(8000 * rpm);
    surroundings.under_hood_temperature = 320;
    const auto does = [&](double outlet_pressure) {
        return blower.compress(samples::air(100e3, 300, 0.03), outlet_pressure, surroundings);
    };
    const auto cool = does(110e3), hot = does(300e3);
    blower.mount_conductance = 1.5;
    blower.mount_temperature = 350;
    EXPECT_GT(does(110e3).outlet.temperature, cool.outlet.temperature);
    EXPECT_LT(does(300e3).outlet.temperature, hot.outlet.temperature);
    const auto held = does(300e3);
    EXPECT_NEAR(held.casing_loss + held.bearing_loss,
                2 * (held.case_temperature - 320) + 1.5 * (held.case_temperature - 350), 1e-9);
}

TEST(BlowerCase, GrowsWithDisplacementRotorSpeedAndDraught) {
    auto blower = roots(0);
    blower.case_conductance.reset();
    const auto in = samples::air(100e3, 300, 0.03);
    const auto node = [&](double speed, double film) {
        auto surroundings = at(speed);
        surroundings.outside_film = film;
        return blower.thermal_nodes(in, 150e3, surroundings)[0];
    };
    const auto usual = node(6000 * rpm, 15);
    EXPECT_NEAR(usual.cold_conductance, 15 * case_surface(220e-6), 1e-12);
    EXPECT_NEAR(node(6000 * rpm, 30).cold_conductance, 2 * usual.cold_conductance, 1e-12);
    EXPECT_NEAR(usual.warm_conductance, case_surface(220e-6) * case_film(220e-6, 6000 * rpm, in),
                1e-12);
    // As the 0.8th power beside a floor for gas at rest.
    const double faster = node(12000 * rpm, 15).warm_conductance / usual.warm_conductance;
    EXPECT_NEAR(faster, std::pow(2, 0.8), 0.05);
    blower.displacement *= 8;
    EXPECT_NEAR(node(6000 * rpm, 15).cold_conductance, 4 * usual.cold_conductance, 1e-12);
    blower.case_area = 0.05;
    EXPECT_NEAR(node(6000 * rpm, 15).cold_conductance, 0.75, 1e-12);
    blower.case_exchange = 0;
    EXPECT_EQ(node(6000 * rpm, 15).warm_conductance, 0);
}

TEST(Blower, DrivesThroughItsBelt) {
    const auto blower = roots(0, 0.25);
    const auto in = samples::air(100e3, 300, 0.03);
    const auto does = blower.compress(in, 160e3, at(8000 * rpm));
    EXPECT_NEAR(does.crank_power, does.shaft_power / 0.96, 1e-9);
    const auto driven = blower.compress(in, 60e3, at(8000 * rpm));  // an air motor
    EXPECT_NEAR(driven.crank_power, driven.shaft_power * 0.96, 1e-9);
    EXPECT_LT(driven.crank_power, 0);
}

TEST(Blower, FillsLessTheFasterItTurns) {
    auto blower = roots(0);
    blower.fill_loss = 0.06;
    const auto in = samples::air(100e3, 300, 0.03);
    const double whole = in.density() * 220e-6 * 5000 / 60;
    EXPECT_NEAR(blower.swept_flow(in, 5000 * rpm), whole * (1 - 0.06 / 4), 1e-15);
    EXPECT_GT(blower.swept_flow(in, 60000 * rpm), 0);
}

TEST(Blower, BendsToItsCapAndSaysSo) {
    const auto blower = roots(8e-6, 0.25);
    double before = 1e9;
    bool capped = false;
    for (double flow = 1e-10; flow < 0.1; flow *= 1.05) {
        const auto does = blower.compress(samples::air(100e3, 300, flow), 190e3, at(6000 * rpm));
        EXPECT_LE(does.outlet.temperature, before);
        EXPECT_LT(does.outlet.temperature, 1500);
        EXPECT_EQ(does.capped, does.outlet.temperature > 1200);
        capped = capped || does.capped;
        before = does.outlet.temperature;
    }
    EXPECT_TRUE(capped);
}

TEST(BlowerPoint, TakesTheLargerOfTwoSolutions) {
    // 15 mm2 at 3000 rpm against 190 kPa: solutions near 3.4 and 2.4 g/s.
    const auto blower = roots(15e-6, 0.25);
    const auto point = blower_point(blower, samples::air(100e3, 298.15, 0), 190e3, 3000 * rpm);
    ASSERT_EQ(point.balance, BlowerBalance::solved);
    const auto shortfall = [&](double flow) {
        return blower.compress(samples::air(100e3, 298.15, flow), 190e3, at(3000 * rpm)).capacity -
               flow;
    };
    EXPECT_NEAR(shortfall(point.gas_flow), 0, 1e-12);
    EXPECT_LT(shortfall(point.gas_flow * 1.01), 0);
    EXPECT_GT(shortfall(point.gas_flow * 0.99), 0);
    int changes = 0;
    for (double flow = 1e-3; flow < 12e-3; flow += 1e-5)
        changes += (shortfall(flow) > 0) != (shortfall(flow + 1e-5) > 0);
    EXPECT_EQ(changes, 2);
}

TEST(BlowerPoint, NamesARunaway) {
    const auto in = samples::air(100e3, 298.15, 0);
    const auto runaway = blower_point(roots(17e-6, 0.25), in, 190e3, 3000 * rpm);
    EXPECT_EQ(runaway.balance, BlowerBalance::runaway);
    EXPECT_TRUE(std::isnan(runaway.gas_flow) && std::isnan(runaway.compression.crank_power));
    EXPECT_EQ(blower_point(roots(60e-6), in, 190e3, 3000 * rpm).balance,
              BlowerBalance::overwhelmed);
    EXPECT_EQ(blower_point(roots(8e-6), in, 190e3, 0).balance, BlowerBalance::overwhelmed);
}

TEST(BlowerPoint, SolvesOrSaysWhyNotInAnyState) {
    samples::Dice dice(12);
    std::array<int, 3> outcomes{};
    for (int i = 0; i < 10000; ++i) {
        auto blower = samples::part<PositiveBlower>(dice);
        blower.leak_area = dice.decades(1e-7, 1e-4);
        const auto in = samples::stream(dice);
        const double behind = in.pressure * dice.between(0.7, 2.5);
        const double speed = dice.decades(30, 3000);
        const auto point = blower_point(blower, in, behind, speed);
        ++outcomes[static_cast<std::size_t>(point.balance)];
        if (point.balance != BlowerBalance::solved) continue;
        EXPECT_NEAR(point.compression.capacity / point.gas_flow, 1, 1e-10);
    }
    for (int count : outcomes)
        EXPECT_GT(count, 100);
}

TEST(BlowerWork, IsTheSameFormulaForRootsAndScrew) {
    EXPECT_NEAR(blower_indicated_work(100e3, 160e3, 220e-6, 1 + 1e-9, 1.4),
                blower_indicated_work(100e3, 160e3, 220e-6, 1, 1.4), 1e-6);
    EXPECT_DOUBLE_EQ(roots_efficiency(1, 1.4), 1);
    EXPECT_NEAR(roots_efficiency(1 + 1e-9, 1.4), 1, 1e-9);
}
