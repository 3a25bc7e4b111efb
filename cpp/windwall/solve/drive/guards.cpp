#include "windwall/solve/drive/guards.hpp"

#include "windwall/driveline/train.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace windwall::solve {
namespace {

// What has just happened does not happen back at once.
constexpr double slack = 1e-6;
// Along a line the crank takes torque for itself only while the belt shifts, and what belt and
// tyres slip changes with it: so far of the position, or of the speed, the shift goes back.
constexpr double shifts_back_beyond = 0.05;
// Where one speed is held, the crank takes its share as soon as the shift ends, the tyres slip the
// less, and the crank turns that little slower.
constexpr double keeps_within = 0.005;
constexpr double stands = 0.01;     // m/s
constexpr double runs_from = 0.25;  // of the idle speed, an engine that nothing drags along
constexpr double slows_by = 0.02;  // m/s, beside a speed that is held, until another pedal is tried

using Then = Guard::Then;

Guard on_state(Happening what, std::function<double(double, std::span<const double>)> number) {
    return {Then::happens, what, {}, 0, std::move(number), {}};
}
Guard on_moment(Happening what, std::function<double(const Moment&)> number) {
    return {Then::happens, what, {}, 0, {}, std::move(number)};
}

void add_grip(std::vector<Guard>& guards, const Mode& mode) {
    if (mode.spinning)
        guards.push_back(on_moment(Happening::tyres_grip, [](const Moment& now) {
            return (1 - slack) * now.most_thrust - now.wanted_thrust;
        }));
    else
        guards.push_back(on_moment(Happening::tyres_spin, [](const Moment& now) {
            return now.wanted_thrust - now.most_thrust;
        }));
}

void add_free_crank(std::vector<Guard>& guards, const Mode& mode, const GuardContext& context) {
    const double sign = mode.ahead ? -1 : 1;
    guards.push_back(on_moment(Happening::clutch_grips, [sign](const Moment& now) {
        return sign * (now.gripping_speed - now.engine_speed) - slack * now.engine_speed;
    }));
    guards.push_back(
        on_state(Happening::rev_limit, [limit = context.rev_limit](double, auto state) {
            return state[Layout::engine_speed] - limit;
        }));
    Guard stops =
        on_state({}, [least = runs_from * context.motion->idle_speed()](double, auto state) {
            return least - state[Layout::engine_speed];
        });
    stops.then = Then::drive_ends;
    stops.end = DriveEnd::stalled;
    guards.push_back(std::move(stops));
}

void add_slipping(std::vector<Guard>& guards, const Mode& mode, const GuardContext& context) {
    if (mode.engine_free) return add_free_crank(guards, mode, context);
    guards.push_back(on_moment(Happening::clutch_grips, [](const Moment& now) {
        return now.gripping_speed - now.engine_speed;
    }));
}

void add_shift(std::vector<Guard>& guards, const Mode& mode, const GuardContext& context) {
    const bool next = context.may_shift && mode.gear + 1 < context.gears;
    const double limit = context.rev_limit;
    if (!next) {
        guards.push_back(on_moment(
            Happening::rev_limit, [limit](const Moment& now) { return now.engine_speed - limit; }));
        return;
    }
    const double by_engine = std::min(limit, context.shift_engine_speed.value_or(limit));
    guards.push_back(on_moment(Happening::shift_begins, [by_engine](const Moment& now) {
        return now.engine_speed - by_engine;
    }));
    if (context.shift_engine_speed) return;
    const double at = (*context.shift_speeds)[mode.gear];
    guards.push_back(on_state(Happening::shift_begins,
                              [at](double, auto state) { return state[Layout::road_speed] - at; }));
}

// An engine that is dragged along by more than a part of the train holds has been let go: it would
// slow down, and what it pays is taken from nobody's account. Released, it idles; at full throttle
// nothing of it moves the vehicle.
void add_let_go(std::vector<Guard>& guards, const Mode& mode, const vehicle::Vehicle& car) {
    Guard let_go = on_moment(Happening::clutch_slips, [&car](const Moment& now) {
        const auto beyond = driveline::dragged_beyond(car.driveline, {now.engine_speed, now.passed},
                                                      now.gear_state);
        return beyond.value_or(-1) - slack;
    });
    if (mode.phase == Phase::driving && mode.pedal > 0) {
        let_go.then = Then::drive_ends;
        let_go.end = DriveEnd::stalled;
    }
    guards.push_back(std::move(let_go));
}

// At an open pedal the crank turns by itself behind a clutch that is asked for more than it holds.
void add_clutch(std::vector<Guard>& guards, const Mode& mode, const Motion& motion) {
    if (mode.pedal <= 0 || !driveline::parting_capacity(motion.vehicle().driveline, 0)) return;
    guards.push_back(on_moment(Happening::clutch_slips, [mode, &motion](const Moment&) {
        return motion.parting(mode).beyond();
    }));
}

// Falling to a speed, from above it.
Guard slows_to(Happening what, double speed) {
    return on_state(what,
                    [speed](double, auto state) { return speed - state[Layout::road_speed]; });
}

// What the pedal cannot give, or hold back.
void add_held(std::vector<Guard>& guards, const Mode& mode) {
    guards.push_back(slows_to(Happening::speed_lost, mode.holds - slows_by));
    guards.push_back(on_state(Happening::speed_gained, [at = mode.holds](double, auto state) {
        return state[Layout::road_speed] - slows_by - at;
    }));
}

void add_variator(std::vector<Guard>& guards, const Mode& mode, const vehicle::Vehicle& car) {
    const auto variator = driveline::variator(car.driveline, mode.gear);
    if (!variator) return;
    const double back = variator->line.begin == variator->line.end && !variator->forces
                            ? keeps_within
                            : shifts_back_beyond;
    if (mode.stretch == 0)
        guards.push_back(on_moment(Happening::ratio_begins, [held = *variator](const Moment& now) {
            return now.engine_speed - held.held_speed(0, now.torque);
        }));
    if (mode.stretch == 1) {
        guards.push_back(on_moment(Happening::ratio_ends,
                                   [](const Moment& now) { return now.wanted_position - 1; }));
        guards.push_back(on_moment(Happening::ratio_rests, [back](const Moment& now) {
            return -back - now.wanted_position;
        }));
    }
    if (mode.stretch == 2)
        guards.push_back(
            on_moment(Happening::ratio_returns, [back, held = *variator](const Moment& now) {
                return (1 - back) * held.held_speed(1, now.torque) - now.engine_speed;
            }));
}

}  // namespace

namespace {

Guard of_pump(std::size_t k, Guard guard) {
    guard.number = k;
    return guard;
}

}  // namespace

void add_pump_guards(std::vector<Guard>& guards, const Mode& mode, const Layout& layout) {
    for (std::size_t k = 0; k < mode.pumps.size(); ++k) {
        const PumpMode& pump = mode.pumps[k];
        const double sign = pump.switched ? -1 : 1;
        const double slow = pump.switched ? slack : 0;
        guards.push_back(of_pump(
            k, on_moment(pump.switched ? Happening::pump_switched_off : Happening::pump_switched_on,
                         [k, sign, slow](const Moment& now) {
                             return sign * now.pumps[k].margin - slow;
                         })));
        if (pump.switched && !pump.runs)
            guards.push_back(
                of_pump(k, on_state(Happening::pump_runs,
                                    [due = pump.due](double time, auto) { return time - due; })));
        if (!pump.full)
            guards.push_back(
                of_pump(k, on_state(Happening::line_full,
                                    [at = layout.first_pump() + Layout::of_a_pump * k + 1](
                                        double, auto state) { return state[at] - 1; })));
    }
}

std::vector<Guard> guards_of(const Mode& mode, const GuardContext& context) {
    std::vector<Guard> guards;
    const vehicle::Vehicle& car = context.motion->vehicle();
    switch (mode.phase) {
        case Phase::slipping:
            if (mode.rests)
                guards.push_back(on_moment(Happening::pulls_away, [](const Moment& now) {
                    return now.thrust - now.load.total() - slack;
                }));
            add_slipping(guards, mode, context);
            add_grip(guards, mode);
            break;
        case Phase::driving:
            if (mode.pedal > 0) {
                add_shift(guards, mode, context);
                guards.push_back(slows_to(Happening::speed_lost, mode.looks_below));
                add_grip(guards, mode);
            }
            if (mode.resumes > 0) guards.push_back(slows_to(Happening::speed_held, mode.resumes));
            add_clutch(guards, mode, *context.motion);
            add_let_go(guards, mode, car);
            add_variator(guards, mode, car);
            break;
        case Phase::coasting:
            if (mode.resumes > 0)
                guards.push_back(slows_to(Happening::clutch_grips, mode.resumes - slows_by));
            [[fallthrough]];
        case Phase::braking:
            guards.push_back(on_state(Happening::stands_still, [](double, auto state) {
                return stands - state[Layout::road_speed];
            }));
            break;
        case Phase::holding:
            add_let_go(guards, mode, car);
            add_held(guards, mode);
            break;
        case Phase::shifting:
        case Phase::standing:
        case Phase::engine_off: break;
    }
    return guards;
}

}  // namespace windwall::solve
