// A spray over time: what switches it, how its pump and its line follow, and what comes of that in
// the first seconds.
#include "windwall/charge/spray_in_time.hpp"

#include "windwall/charge/spray_start.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

#include "wet_samples.hpp"

using namespace windwall;
using namespace windwall::charge;

namespace {

constexpr double rpm = std::numbers::pi / 30;

/// Of those of the samples one that a pressure switches.
EvaporativeInjection nozzle() {
    EvaporativeInjection made = blend_nozzle();
    made.starts_at = 30e3;
    return made;
}

Surroundings around(double boost) {
    Surroundings made = day();
    made.sensed_pressure = made.ambient_pressure + boost;
    return made;
}

const media::Stream& charge_before() {
    static const media::Stream made = humid(96e3, 330, 0.025);
    return made;
}

/// How often the switch changes over a boost that wanders about where the pump starts.
int changes(const EvaporativeInjection& part, double wander) {
    bool on = false;
    int count = 0;
    for (double time = 0; time < 4; time += 1e-3) {
        const double boost =
            20e3 + 5e3 * time + wander * std::sin(2 * std::numbers::pi * 10 * time);
        const bool now = switched_on(part, on, charge_before(), around(boost));
        count += now != on;
        on = now;
    }
    EXPECT_TRUE(on);
    return count;
}

/// Where a state of first order goes, by small steps of the classical fourth order.
double integrated(double start, double duration,
                  const std::function<double(double, double)>& rate) {
    constexpr int steps = 4000;
    const double h = duration / steps;
    double y = start;
    for (int i = 0; i < steps; ++i) {
        const double t = i * h;
        const double a = rate(t, y), b = rate(t + h / 2, y + h / 2 * a);
        const double c = rate(t + h / 2, y + h / 2 * b), d = rate(t + h, y + h * c);
        y += h / 6 * (a + 2 * b + 2 * c + d);
    }
    return y;
}

}  // namespace

TEST(SpraySwitch, DoesNotChatterWithinItsHysteresis) {
    EvaporativeInjection part = nozzle();
    part.hysteresis = 3e3;
    EXPECT_EQ(changes(part, 1.4e3), 1);
    part.hysteresis = 0;
    EXPECT_GT(changes(part, 1.4e3), 3);
}

TEST(SpraySwitch, StaysOnDownToItsHysteresis) {
    EvaporativeInjection part = nozzle();
    part.hysteresis = 4e3;
    const auto on = [&](double boost, bool was) {
        return switched_on(part, was, charge_before(), around(boost));
    };
    EXPECT_FALSE(on(29.9e3, false));
    EXPECT_TRUE(on(30.1e3, false));
    EXPECT_TRUE(on(26.1e3, true));
    EXPECT_FALSE(on(25.9e3, true));
    EXPECT_NEAR(switch_margin(part, true, charge_before(), around(31e3)), 5e3 / part.full_after,
                1e-12);
}

TEST(SpraySwitch, AlwaysRunsWhereNothingSwitchesIt) {
    EvaporativeInjection part = nozzle();
    part.starts_at.reset();
    EXPECT_TRUE(switched_on(part, false, charge_before(), around(-50e3)));
    EXPECT_EQ(running_wanted(part, true, charge_before(), around(-50e3)), 1);
}

// Each bound on its own side, and all of them at once.
TEST(SpraySwitch, AsksForEveryBoundThatIsStated) {
    EvaporativeInjection part = nozzle();
    Surroundings here = around(50e3);
    here.throttle_opening = 0.9;
    here.engine_speed = 4000 * rpm;
    const auto on = [&] { return switched_on(part, false, charge_before(), here); };
    using Bound = std::optional<double> Trigger::*;
    const auto alone = [&](Bound bound, double at) {
        part.trigger = {};
        part.trigger.*bound = at;
        return on();
    };
    EXPECT_TRUE(alone(&Trigger::pedal_above, 0.8));
    EXPECT_FALSE(alone(&Trigger::pedal_above, 0.95));
    EXPECT_TRUE(alone(&Trigger::pedal_below, 0.95));
    EXPECT_FALSE(alone(&Trigger::pedal_below, 0.8));
    EXPECT_TRUE(alone(&Trigger::charge_temperature_above, 325));
    EXPECT_FALSE(alone(&Trigger::charge_temperature_above, 335));
    EXPECT_TRUE(alone(&Trigger::charge_temperature_below, 335));
    EXPECT_FALSE(alone(&Trigger::charge_temperature_below, 325));
    EXPECT_TRUE(alone(&Trigger::engine_speed_above, 3500 * rpm));
    EXPECT_FALSE(alone(&Trigger::engine_speed_above, 4500 * rpm));
    EXPECT_TRUE(alone(&Trigger::engine_speed_below, 4500 * rpm));
    EXPECT_FALSE(alone(&Trigger::engine_speed_below, 3500 * rpm));
    part.trigger.engine_speed_below = 4500 * rpm;
    part.trigger.pedal_above = 0.8;
    EXPECT_TRUE(on());
    here.sensed_pressure -= 30e3;  // and the pressure with them
    EXPECT_FALSE(on());
}

TEST(SpraySwitch, IsRefusedWhereNothingCanMeetIt) {
    Trigger asked;
    asked.engine_speed_above = 5000 * rpm;
    EXPECT_FALSE(asked.check());
    asked.engine_speed_below = 5000 * rpm;
    ASSERT_TRUE(asked.check());
    EXPECT_EQ(asked.check()->key, "engine_speed_below");
}

// In the long pull each bound comes in without a step, and is what the switch has in the end.
TEST(SpraySwitch, StartsAtEachBoundWithoutAStep) {
    EvaporativeInjection part = nozzle();
    part.starts_at.reset();
    part.trigger.engine_speed_above = 3000 * rpm;
    part.trigger.charge_temperature_above = 329.5;
    Surroundings here = around(0);
    double last = 0;
    for (double speed = 2950 * rpm; speed < 3150 * rpm; speed += rpm) {
        here.engine_speed = speed;
        const double running = part.spray(charge_before(), here).running;
        EXPECT_GE(running, last);
        EXPECT_LT(running - last, 0.02);
        EXPECT_EQ(running > 0, switched_on(part, false, charge_before(), here));
        EXPECT_EQ(running, running_wanted(part, running > 0, charge_before(), here));
        last = running;
    }
    EXPECT_NEAR(last, 0.15625, 1e-12);  // 330 K is a quarter of the way in
}

TEST(SprayOverTime, FlowsAsItsPumpIsHeld) {
    const EvaporativeInjection part = nozzle();
    const Spray whole = part.spray(charge_before(), around(60e3));
    Surroundings here = around(60e3);
    here.held.running = 0.25;
    EXPECT_NEAR(part.spray(charge_before(), here).flow, whole.flow / 4, 1e-15);
    here.held.running = 1;
    const Spray held = part.spray(charge_before(), here);
    EXPECT_EQ(held.flow, whole.flow);
    EXPECT_EQ(held.drop_diameter, whole.drop_diameter);
    here = around(0);  // the switch is off, and the pump still runs down
    here.held.running = 0.5;
    EXPECT_NEAR(part.spray(charge_before(), here).flow, whole.flow / 2, 1e-15);
}

// While it is on the hysteresis counts as pressure; while its delay is not over nothing runs.
TEST(SprayOverTime, RunsUpToWhatItsSwitchAsksFor) {
    EvaporativeInjection part = nozzle();
    part.hysteresis = 2e3;
    const auto wanted = [&](bool on, double boost) {
        return running_wanted(part, on, charge_before(), around(boost));
    };
    EXPECT_EQ(wanted(false, 60e3), 0);
    EXPECT_EQ(wanted(true, 60e3), 1);
    EXPECT_EQ(wanted(true, 29e3), part.asked(charge_before(), around(31e3)));
    EXPECT_GT(wanted(true, 29e3), 0);
    EXPECT_EQ(wanted(true, 27e3), 0);
}

TEST(SprayOverTime, ComesToWhatTheLongPullHas) {
    EvaporativeInjection part = nozzle();
    part.hysteresis = 0;
    for (const double boost : {20e3, 30.5e3, 33e3, 34.9e3, 60e3}) {
        const Surroundings here = around(boost);
        const bool on = switched_on(part, false, charge_before(), here);
        const double running =
            integrated(on ? 0 : 1, 40 * part.pump_rise_time, [&](double, double y) {
                return running_rate(part, y, running_wanted(part, on, charge_before(), here));
            });
        Surroundings held = here;
        held.held.running = running;
        held.held.line_filled = 1;
        EXPECT_NEAR(running, part.spray(charge_before(), here).running, 1e-12) << boost;
        EXPECT_NEAR(part.spray(charge_before(), held).flow, part.spray(charge_before(), here).flow,
                    1e-12 * part.rated_flow * 1000)
            << boost;
    }
}

TEST(SprayOverTime, FillsItsLineBeforeTheFirstLiquidLeaves) {
    const EvaporativeInjection part = nozzle();
    Surroundings here = around(60e3);
    const double whole = part.spray(charge_before(), here).flow;
    here.held.running = 1;
    here.held.line_filled = 0.5;
    const Spray filling = part.spray(charge_before(), here);
    EXPECT_EQ(filling.flow, 0);
    EXPECT_EQ(filling.drop_diameter, 0);
    EXPECT_EQ(filling.filling, whole);
    const double volume_flow = whole / part.blend_density();
    EXPECT_NEAR(line_fill_rate(part, 0.5, filling.filling), volume_flow / part.line_volume, 1e-12);
    here.held.line_filled = 1;
    EXPECT_EQ(part.spray(charge_before(), here).flow, whole);
    EXPECT_EQ(line_fill_rate(part, 1, whole), 0);
}

TEST(SprayOverTime, KeepsItsLineFullBehindAValveOrUnderVacuum) {
    EvaporativeInjection part = nozzle();
    EXPECT_EQ(line_at_rest(part, 0), 1);
    part.check_valve = false;
    EXPECT_EQ(line_at_rest(part, 0), 0);
    EXPECT_EQ(line_at_rest(part, 1e-4), 1);
    // What vacuum draws fills an empty line first.
    Surroundings idle = around(-60e3);
    idle.held = {{}, 0, 0.2};
    const Spray drawn = part.spray(humid(40e3, 330, 0.005), idle);
    EXPECT_EQ(drawn.flow, 0);
    EXPECT_EQ(drawn.siphoned, 0);
    EXPECT_GT(drawn.filling, 0);
}

// The closed form beside its own differential equations, integrated here.
TEST(SprayStart, IsWhatItsEquationsGive) {
    for (const double film_time : {0.05, 0.3, 0.300001, 0.8}) {
        const SprayStart start{0.1, 0.3, 0.25, 0.6, film_time};
        const double first = start.first_liquid();
        const double pumped = integrated(0, first - start.delay, [&](double t, double) {
            return start.running(start.delay + t);
        });
        EXPECT_NEAR(pumped, start.fill_time, 1e-12);
        EXPECT_EQ(start.sprayed(first - 1e-6), 0);
        EXPECT_EQ(start.arrived(first - 1e-6), 0);
        EXPECT_NEAR(start.sprayed(first), start.running(first), 1e-12);
        for (const double later : {0.01, 0.2, 1.5}) {
            const double film = integrated(0, later, [&](double t, double y) {
                return (start.running(first + t) - y) / film_time;
            });
            const double time = first + later;
            EXPECT_NEAR(start.arrived(time), 0.4 * start.sprayed(time) + 0.6 * film, 1e-10)
                << film_time << ' ' << later;
        }
    }
}

TEST(SprayStart, IsAFullLineAndAQuickPumpInTheLimit) {
    const SprayStart full{0.1, 0.3, 0, 0.5, 0.4};
    EXPECT_EQ(full.first_liquid(), 0.1);
    EXPECT_EQ(full.running(0.09), 0);
    EXPECT_NEAR(full.running(0.4), 1 - std::exp(-1), 1e-12);
    const SprayStart quick{0.1, 1e-4, 0.25, 0.5, 0.4};
    EXPECT_NEAR(quick.first_liquid(), 0.1 + 0.25 + 1e-4, 1e-9);
    EXPECT_NEAR(quick.arrived(0.3501 + 0.4), 1 - 0.5 * std::exp(-1), 1e-3);
    EXPECT_NEAR(quick.arrived(100), 1, 1e-12);
    const SprayStart slow{0, 1, 1e-9, 0, 1};  // its start alone: half the square of the time
    EXPECT_NEAR(slow.first_liquid(), std::sqrt(2e-9), 1e-9);
}
