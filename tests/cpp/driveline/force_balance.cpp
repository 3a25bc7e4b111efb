// Weights, springs and cam of a belt drive: closed forms, what tuners know of each of them, and the
// seam that says which engine speed belongs to a position.
#include "windwall/driveline/force_balance.hpp"

#include "windwall/driveline/fit_flyweights.hpp"
#include "windwall/driveline/launch.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "samples.hpp"

using namespace windwall;
using namespace windwall::driveline;
using samples::Dice;
using samples::weighted;

namespace {

constexpr double rpm = std::numbers::pi / 30;

ForceBalance balance(const BeltCvt& part) { return part.forces().value(); }

/// What the same drive holds in the middle of its shift with one number of it changed.
template <class Change>
double held_with(Change&& change, double torque = 25) {
    BeltCvt part = weighted();
    change(part);
    return part.variator().held_speed(0.5, torque);
}

}  // namespace

TEST(ForceBalance, HoldsTheSpeedAtWhichTheForcesAreAsTheWraps) {
    const BeltCvt part = weighted();
    for (const double position : {0.0, 0.3, 1.0}) {
        const double ratio = part.ratio({0, position}), torque = 20;
        const double speed = part.variator().held_speed(position, torque);
        const BeltPlace belt = balance(part).place(ratio);
        const double driven = part.drive({speed, torque}, {0, position}).torque;
        EXPECT_NEAR(part.flyweights->closing_force(speed, belt.closed) /
                        part.torque_cam->closing_force(driven, belt.opened),
                    belt.wraps.driving / belt.wraps.driven, 1e-9);
    }
}

TEST(ForceBalance, TenPercentMoreWeightIsThisMuchSlower) {
    const double before = held_with([](BeltCvt&) {});
    const double heavier = held_with([](BeltCvt& part) { part.flyweights->weight_mass *= 1.1; });
    EXPECT_NEAR(heavier, before / std::sqrt(1.1), 1e-9 * before);
}

// What practice knows: more weight or a steeper ramp hold the engine slower, a stiffer spring on
// either side and a flatter helix faster; and it is held the faster the more torque it gives.
TEST(ForceBalance, GoesWhereTunersSayItGoes) {
    const double before = held_with([](BeltCvt&) {});
    EXPECT_LT(held_with([](BeltCvt& part) { part.flyweights->ramp *= 1.2; }), before);
    EXPECT_LT(held_with([](BeltCvt& part) { part.flyweights->weight_radius *= 1.1; }), before);
    EXPECT_GT(held_with([](BeltCvt& part) { part.flyweights->spring_preload += 50; }), before);
    EXPECT_GT(held_with([](BeltCvt& part) { part.flyweights->spring_rate *= 1.3; }), before);
    EXPECT_GT(held_with([](BeltCvt& part) { part.torque_cam->spring_preload += 50; }), before);
    EXPECT_GT(held_with([](BeltCvt& part) { part.torque_cam->torsion += 5; }), before);
    EXPECT_LT(held_with([](BeltCvt& part) { part.torque_cam->cam_angle += 0.1; }), before);
    EXPECT_GT(held_with([](BeltCvt&) {}, 26), before);
    EXPECT_EQ(held_with([](BeltCvt&) {}, -10), held_with([](BeltCvt&) {}, 0));
}

TEST(ForceBalance, EngagesWhereTheWeightsBeatTheirSpring) {
    BeltCvt part = weighted();
    const Flyweights& closing = *part.flyweights;
    const double speed = balance(part).engagement_speed();
    EXPECT_NEAR(closing.centrifugal({0, 0.014}) * speed * speed, closing.spring_preload, 1e-9);
    EXPECT_EQ(balance(part).capacity(0.999 * speed, part.low_ratio), 0);
    EXPECT_GT(balance(part).capacity(1.001 * speed, part.low_ratio), 0);
    EXPECT_EQ(part.drive({0.9 * speed, 20}, {0, 0}).torque,
              part.drive({0.9 * speed, 0}, {0, 0}).torque);
}

// The belt carries what arrives, no more and no less, at the speed that it holds at the start.
TEST(ForceBalance, TakesHoldWhereItJustCarriesTheTorque) {
    const BeltCvt part = weighted();
    for (const double torque : {2.0, 5.0, 8.0}) {
        const double speed = part.taking_hold(torque).value();
        EXPECT_NEAR(part.capacity(speed, {0, 0}).value(), torque, 1e-9);
        EXPECT_EQ(launch_speed({{"belt", part}}, torque).value(), speed);
    }
    EXPECT_LE(part.taking_hold(1e4).value(), part.variator().held_speed(0, 1e4));
}

// Behind a belt with weights the shoes of a scooter hold the start; a stated engagement is
// measured.
TEST(ForceBalance, LeavesTheStartToAClutch) {
    BeltCvt part = weighted();
    CentrifugalClutch shoes;
    shoes.engagement_speed = 100;
    shoes.shoe_mass = 0.12;
    shoes.drum_radius = 0.055;
    shoes.shoe_radius = 0.045;
    EXPECT_NEAR(launch_speed({{"belt", part}, {"clutch", shoes}}, 5).value(),
                part.low_ratio * shoes.holding_speed(5 * part.low_ratio), 1e-9);
    part.engagement_speed = 333;
    EXPECT_EQ(launch_speed({{"belt", part}}, 5).value(), 333);
}

// Squeezed by what the weights press with until it shifts, from there on by what the driven side
// answers with; the side wrapped less slips first.
TEST(ForceBalance, HoldsWhatTheWeakerSideClamps) {
    const BeltCvt part = weighted();
    const Sheaves& sheaves = *part.sheaves;
    const double torque = 15;
    for (const double position : {0.0, 0.4, 1.0}) {
        const double ratio = part.ratio({0, position});
        const BeltPlace belt = balance(part).place(ratio);
        const double weaker = std::min(1.0, belt.wraps.driven / belt.wraps.driving);
        const double speed = part.variator().held_speed(position, torque);
        const double force = part.clamp_force({speed, torque}, {0, position}).value();
        EXPECT_NEAR(part.flyweights->closing_force(speed, belt.closed), force, 1e-8 * force);
        EXPECT_LE(part.capacity(speed, {0, position}).value(),
                  sheaves.capacity(weaker * force, ratio) * (1 + 1e-9));
        EXPECT_LT(part.clamp_force({0.9 * speed, torque}, {0, position}).value(), force);
        EXPECT_NEAR(part.clamp_force({1.1 * speed, torque}, {0, position}).value(), force,
                    1e-8 * force);
    }
}

// T = a + b T by hand: what the springs hold, and a helix that adds to it what torque it gets.
TEST(ForceBalance, HoldsMoreTheMoreItsHelixIsAskedFor) {
    BeltCvt part = weighted();
    part.drag_share = part.load_loss = part.ratio_loss = 0;
    const double ratio = part.ratio({0, 0.5}), fast = 5000;
    const BeltPlace belt = balance(part).place(ratio);
    const double share = std::min(1.0, belt.wraps.driving / belt.wraps.driven);
    const auto clamped = [&](double force) { return part.sheaves->capacity(share * force, ratio); };
    const double springs = clamped(part.torque_cam->closing_force(0, belt.opened));
    const double gained = clamped(part.torque_cam->force_per_torque() * ratio);
    ASSERT_LT(gained, 1);
    EXPECT_NEAR(part.capacity(fast, {0, 0.5}).value(), springs / (1 - gained), 1e-9);
    part.torque_cam->torque_share = 0;
    EXPECT_NEAR(part.capacity(fast, {0, 0.5}).value(), springs, 1e-9);
    part.torque_cam->torque_share = 1;
    part.torque_cam->cam_angle = 0.3;
    part.sheaves->friction = 0.6;
    EXPECT_EQ(balance(part).capacity(std::numeric_limits<double>::infinity(), ratio),
              std::numeric_limits<double>::infinity());
    EXPECT_LT(part.capacity(300, {0, 0.5}).value(), 1e3);  // the weights are slow
}

TEST(Variator, TakesThePositionWhoseSpeedItIs) {
    const Variator shifting = weighted().variator();
    for (const double torque : {0.0, 10.0, 25.0}) {
        const double low = shifting.held_speed(0, torque), high = shifting.held_speed(1, torque);
        ASSERT_LT(low, high);
        EXPECT_EQ(shifting.position(0.99 * low, torque), 0);
        EXPECT_EQ(shifting.position(1.01 * high, torque), 1);
        for (const double position : {0.1, 0.5, 0.9}) {
            const double held = shifting.held_speed(position, torque);
            EXPECT_NEAR(shifting.position(held, torque), position, 1e-9);
            EXPECT_NEAR(shifting.position_at_output(held / shifting.ratio(position), torque),
                        position, 1e-9);
        }
    }
}

TEST(Variator, RisesAlongALineBetweenTwoMeasuredSpeeds) {
    BeltCvt part = samples::cvt();
    part.shift_end_speed = 700;
    ASSERT_FALSE(part.check());
    const Variator shifting = part.variator();
    EXPECT_EQ(shifting.held_speed(0, 9), 600);
    EXPECT_EQ(shifting.held_speed(1, 99), 700);
    EXPECT_NEAR(shifting.held_speed(0.25, 9), 625, 1e-12);
    EXPECT_NEAR(shifting.position(650, 9), 0.5, 1e-12);
    // d ln(w) / d ln(w/i) with w = 600 + 100 p and i = 2.7 (0.8/2.7)^p.
    const double rise = 100 / 650.0;
    EXPECT_NEAR(shifting.crank_share(0.5, 9), rise / (rise + std::log(2.7 / 0.8)), 1e-6);
    part.shift_end_speed.reset();
    EXPECT_EQ(part.variator().crank_share(0.5, 9), 0);
    EXPECT_EQ(part.variator().position(599, 9), 0);
    EXPECT_EQ(part.variator().position(601, 9), 1);
}

// Behind a reduction of 2 the sheave turns half as fast, with twice the torque.
TEST(Variator, SpeaksOfTheCrank) {
    FinalDrive primary;
    primary.fixed_ratio = 2;
    const Variator alone = weighted().variator();
    const Variator behind = variator({{"primary", primary}, {"belt", weighted()}}).value();
    EXPECT_NEAR(behind.held_speed(0.4, 10), 2 * alone.held_speed(0.4, 20), 1e-9);
    EXPECT_NEAR(behind.position_at_output(300, 10), alone.position_at_output(300, 20), 1e-12);
}

TEST(Sheaves, StopWhereTheirTravelEnds) {
    BeltCvt part = weighted();
    EXPECT_EQ(part.reached_ratio(), part.high_ratio);
    const double needed = balance(part).place(part.high_ratio).closed.now;
    part.sheaves->travel = 1.01 * needed;
    EXPECT_EQ(part.reached_ratio(), part.high_ratio);
    part.sheaves->travel = 0.7 * needed;
    EXPECT_GT(part.reached_ratio(), part.high_ratio);
    EXPECT_EQ(part.ratio({0, 1}), part.reached_ratio());
    EXPECT_NEAR(balance(part).place(part.reached_ratio()).closed.now, 0.7 * needed, 1e-9);
}

TEST(BeltCvt, IsToldInOneOfThreeDepths) {
    EXPECT_FALSE(weighted().check());
    const auto key = [](auto&& change, BeltCvt part) {
        change(part);
        const auto violation = part.check();
        return violation ? std::string(violation->key) : std::string("sound");
    };
    EXPECT_EQ(key([](BeltCvt& part) { part.shift_speed = 600; }, weighted()), "shift_speed");
    EXPECT_EQ(key([](BeltCvt& part) { part.torque_cam.reset(); }, weighted()), "torque_cam");
    EXPECT_EQ(key([](BeltCvt& part) { part.flyweights.reset(); }, weighted()), "flyweights");
    EXPECT_EQ(key([](BeltCvt& part) { part.sheaves.reset(); }, weighted()), "sheaves");
    EXPECT_EQ(key([](BeltCvt& part) { part.sheaves->clamp_force = 900; }, weighted()), "sheaves");
    EXPECT_EQ(key([](BeltCvt& part) { part.sheaves->belt_length = 1.9; }, weighted()), "sheaves");
    EXPECT_EQ(key([](BeltCvt& part) { part.shift_speed.reset(); }, samples::cvt()), "shift_speed");
    EXPECT_EQ(key([](BeltCvt& part) { part.shift_end_speed = 200; }, samples::cvt()),
              "shift_end_speed");
    EXPECT_EQ(key([](BeltCvt& part) { part.shift_end_speed = 500; }, samples::cvt()), "sound");
}

// The inverse: what is fitted holds what was wanted.
TEST(FitFlyweights, HoldWhatWasWanted) {
    BeltCvt part = weighted();
    const WantedShift wanted{580, 22, 700, 26, 300};
    const FittedFlyweights fitted = fit_flyweights(part, wanted);
    ASSERT_GT(fitted.spring_rate, 0);
    part.flyweights->weight_mass = fitted.weight_mass;
    part.flyweights->spring_preload = fitted.spring_preload;
    BeltCvt ramped = part;
    ramped.flyweights->ramp_closed = fitted.ramp_closed;
    part.flyweights->spring_rate = fitted.spring_rate;
    for (const BeltCvt& made : {part, ramped}) {
        EXPECT_NEAR(made.variator().held_speed(0, 22), 580, 1e-9);
        EXPECT_NEAR(made.variator().held_speed(1, 26), 700, 1e-9);
        EXPECT_NEAR(balance(made).engagement_speed(), 300, 1e-9);
    }
}

TEST(FitFlyweights, LeavesTheSpringWhereOnlyOneSpeedIsWanted) {
    BeltCvt part = weighted();
    const FittedFlyweights fitted = fit_flyweights(part, {550, 20, {}, 0, {}});
    EXPECT_EQ(fitted.spring_preload, part.flyweights->spring_preload);
    EXPECT_EQ(fitted.spring_rate, part.flyweights->spring_rate);
    EXPECT_EQ(fitted.ramp_closed, part.flyweights->ramp);
    part.flyweights->weight_mass = fitted.weight_mass;
    EXPECT_NEAR(part.variator().held_speed(0, 20), 550, 1e-9);
    // No spring pulls: that is told as a rate below 0, beside the ramp that would do.
    EXPECT_LT(fit_flyweights(part, {550, 20, 400, 20, {}}).spring_rate, 0);
    EXPECT_GT(fit_flyweights(part, {550, 20, 400, 20, {}}).ramp_closed, part.flyweights->ramp);
}

// Whatever drive the rows allow: speeds and forces are finite, no torque below what it carries at
// no slip makes it slip, no watt is made, and the speed it holds rises with the torque.
TEST(ForceBalance, KeepsItsRulesWhateverIsStated) {
    Dice dice(3);
    for (int i = 0; i < 3000; ++i) {
        const BeltCvt part = samples::any_weighted(dice);
        const Variator shifting = part.variator();
        const double position = dice.between(0, 1), torque = dice.between(0, 200);
        const double held = shifting.held_speed(position, torque);
        ASSERT_TRUE(std::isfinite(held) && held > 0);
        EXPECT_LE(held, shifting.held_speed(position, 1.1 * torque) * (1 + 1e-12));
        const double most = part.capacity(held, {0, position}).value();
        EXPECT_GE(most, 0);
        EXPECT_LE(most, part.capacity(1.1 * held, {0, position}).value());
        const double at = shifting.position(held, torque);
        EXPECT_TRUE(at >= 0 && at <= 1);
        EXPECT_GE(part.taking_hold(torque).value(), balance(part).engagement_speed() * (1 - 1e-12));
        const Shaft in{dice.between(1, 900), dice.between(-60, 300)};
        const Shaft out = part.drive(in, {0, position});
        EXPECT_LE(out.power(), in.power() < 0 ? 0 : in.power() * (1 + 1e-12));
        EXPECT_LE(out.torque, part.drive({in.speed, in.torque + 5}, {0, position}).torque);
    }
}

// The speed it holds has no jump along the shift, nor where the belt begins to slip.
TEST(ForceBalance, HoldsASpeedWithoutJumps) {
    Dice dice(8);
    for (int i = 0; i < 300; ++i) {
        const Variator shifting = samples::any_weighted(dice).variator();
        const double position = dice.between(0, 0.999), torque = dice.between(0, 150);
        const double held = shifting.held_speed(position, torque);
        EXPECT_NEAR(shifting.held_speed(position + 1e-6, torque), held, 1e-3 * held);
        EXPECT_NEAR(shifting.held_speed(position, torque + 1e-6), held, 1e-3 * held);
    }
}
