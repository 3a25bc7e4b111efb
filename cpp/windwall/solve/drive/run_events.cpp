// What follows from what happens in a drive.
#include "windwall/charge/spray_in_time.hpp"
#include "windwall/solve/drive/run.hpp"

#include <algorithm>

namespace windwall::solve {

namespace {

constexpr double at_once = 1e-4;     // s, between events that follow from each other
constexpr int chatters_after = 12;   // events at once
constexpr double calm = 0.01;        // s, for which what chatters is left as it is
constexpr double settles_to = 1e-3;  // of the crank's speed, at the edge of what slips
constexpr int most_at_once = 40;

}  // namespace

/// What follows from what happened.
Run::Verdict Run::react(const Guard& guard) {
    const bool slips = mode_.phase == Phase::slipping;
    switch (guard.what) {
        case Happening::clutch_slips: return let_go();
        case Happening::clutch_grips:
            if (slips && mode_.engine_free) return meet();
            break;
        case Happening::rev_limit:
            if (!slips && waits_for_speed_) return ends_at_the_rev_limit();
            break;
        case Happening::shift_ends:
            pull(mode_.gear);
            note(guard.what);
            return Verdict::leg_goes_on;
        case Happening::shift_begins:
            if (next_gear_pulls()) break;
            mode_.stays = true;
            set(Mode(mode_));
            return Verdict::leg_goes_on;
        case Happening::speed_lost: return lose_speed();
        case Happening::speed_gained: return gain_speed(), Verdict::leg_goes_on;
        case Happening::road_turns: return look_round(), Verdict::leg_goes_on;
        case Happening::stands_still: return come_to_rest();
        case Happening::pump_switched_on:
        case Happening::pump_switched_off:
        case Happening::pump_runs:
        case Happening::line_full: pump(guard); break;
        case Happening::liquid_empty: mode_.dry = true; break;
        default: break;
    }
    if (guard.what != Happening::pulls_away) note(guard.what);
    set(after(guard.what));
    return Verdict::leg_goes_on;
}

/// What the vehicle does from then on.
Mode Run::after(Happening what) {
    Mode next = mode_;
    switch (what) {
        case Happening::clutch_grips:
            return mode_.phase == Phase::coasting ? held_in(mode_.gear) : geared();
        case Happening::speed_held: return held_in(mode_.gear);
        case Happening::shift_begins:
            return {.phase = Phase::shifting, .gear = mode_.gear + 1, .lifted = outing_.lift};
        case Happening::rev_limit:
            if (mode_.phase != Phase::slipping) return held_in(mode_.gear);
            next.engine_free = false;
            next.engine_speed = rev_limit_;
            break;
        case Happening::ratio_begins: next.stretch = 1; break;
        case Happening::ratio_ends: next.stretch = 2; break;
        case Happening::ratio_returns: next.stretch = 1; break;
        case Happening::ratio_rests: next.stretch = 0; break;
        case Happening::tyres_spin: next.spinning = true; break;
        case Happening::tyres_grip: next.spinning = false; break;
        case Happening::pulls_away: next.rests = false; break;
        default: break;
    }
    return next;
}

/// Where more speed of the crank was waited for, none comes.
Run::Verdict Run::ends_at_the_rev_limit() {
    note(Happening::rev_limit);
    result_.end = DriveEnd::no_more_speed;
    return Verdict::drive_ends;
}

/// A leg that ends by braking is done, unless the vehicle is then to stand for a time.
Run::Verdict Run::come_to_rest() {
    note(Happening::stands_still);
    if (!then_stand_) return stand(0, false), Verdict::leg_done;
    const vehicle::Stop leg = *then_stand_;
    then_stand_.reset();
    stand(leg);
    return Verdict::leg_goes_on;
}

/// Where what belts and tyres slip grows with what the crank gives, and that with its speed, no
/// speed of it may agree with them.
bool Run::unsettled() {
    const double by = moment(state_).unsettled;
    if (by <= settles_to) return false;
    result_.outcome = {Status::not_converged, slip_of_belts_and_tyres, by, at_once_};
    return true;
}

/// What chatters is left as it is for a moment: at the edge of what they hold tyres may be said to
/// spin and to grip in turn, where nothing but what is told depends on it, and so may a clutch,
/// where a hundredth of what it passes does.
std::optional<DriveEnd> Run::chatters() {
    at_once_ = time_ > last_event_ + at_once ? 0 : at_once_ + 1;
    last_event_ = time_;
    if (at_once_ <= chatters_after) return std::nullopt;
    if (unsettled()) return DriveEnd::no_answer;
    if (at_once_ > most_at_once) return DriveEnd::too_many_events;
    calm_until_ = time_ + calm;
    return std::nullopt;
}

bool Run::passed_over(const Guard& guard) const {
    if (guard.then == Guard::Then::speed_reached && mode_.phase == Phase::shifting) return true;
    return time_ < calm_until_ &&
           (guard.what == Happening::tyres_spin || guard.what == Happening::tyres_grip ||
            guard.what == Happening::clutch_slips) &&
           guard.then == Guard::Then::happens;
}

/// Where crank and wheels that turned apart turn together again.
Mode Run::geared() const {
    return {.phase = Phase::driving,
            .gear = mode_.gear,
            .stretch = stretch_at(mode_.position),
            .pedal = mode_.pedal,
            .spinning = mode_.spinning,
            .looks_below = looks_below(mode_.gear)};
}

/// A crank that turns by itself is as fast as the wheels: the part takes hold, or where that asks
/// for too much of it they go on past each other.
Run::Verdict Run::meet() {
    set(geared());
    moment(state_);
    if (time_ >= calm_until_ && motion_.parting(mode_).beyond() >= 0) return let_go();
    note(Happening::clutch_grips);
    return Verdict::leg_goes_on;
}

/// A crank that a part of the train does not hold any more: at an open pedal it turns by itself
/// against what is passed on; released it idles, and so it does where a speed was held by dragging
/// it along, until the road slows the vehicle down to that speed again. Where that does at once,
/// the engine gives too little.
Run::Verdict Run::let_go() {
    note(Happening::clutch_slips);
    const bool held = mode_.phase == Phase::holding;
    Mode next{
        .phase = Phase::coasting, .gear = mode_.gear, .resumes = held ? speed() : mode_.resumes};
    if (!held && mode_.pedal > 0) next = turn_apart();
    set(next);
    if (!held || moment(state_).acceleration > 0) return Verdict::leg_goes_on;
    result_.end = DriveEnd::stalled;
    return Verdict::drive_ends;
}

/// Each on its own side of the speed at which they would meet, by what belts slip meanwhile.
Mode Run::turn_apart() {
    const Moment& now = moment(state_);
    const Parting parting = motion_.parting(mode_);
    Mode next = mode_;
    next.phase = Phase::slipping;
    next.engine_free = true;
    next.ahead = parting.falls_behind > parting.runs_ahead;
    next.position = now.gear_state.position;
    double& speed = state_[Layout::engine_speed];
    speed = now.engine_speed;
    const double meets = motion_.at(next, place(run_distance()), state_).gripping_speed;
    speed = next.ahead ? std::min(speed, meets) : std::max(speed, meets);
    return next;
}

/// What a pump and its line do from now on.
void Run::pump(const Guard& guard) {
    PumpMode& pump = mode_.pumps[guard.number];
    const auto* nozzle = nozzle_of(guard.number);
    switch (guard.what) {
        case Happening::pump_switched_on:
            pump.switched = true;
            pump.due = time_ + (nozzle ? nozzle->delay : 0);
            break;
        case Happening::pump_runs: pump.runs = true; break;
        case Happening::line_full: pump.full = true; break;
        default: pump.switched = pump.runs = false; rest_line(guard.number);
    }
}

/// A line whose pump rests stays full, or runs back into the tank.
void Run::rest_line(std::size_t number) {
    const auto* nozzle = nozzle_of(number);
    const double filled = nozzle ? charge::line_at_rest(*nozzle, 0) : 1;
    state_[motion_.layout().first_pump() + Layout::of_a_pump * number + 1] = filled;
    mode_.pumps[number].full = filled >= 1;
}

const charge::EvaporativeInjection* Run::nozzle_of(std::size_t number) const {
    return vehicle_.charge_path[motion_.layout().pumps[number]]
        .part.as<charge::EvaporativeInjection>();
}

/// g of what the nozzles have to spray.
double Run::liquid_on_board() const {
    double density = 1000;
    for (const std::size_t part : motion_.layout().pumps)
        if (const auto* nozzle = vehicle_.charge_path[part].part.as<charge::EvaporativeInjection>())
            density = nozzle->blend_density();
    return 1000 * *outing_.liquid_on_board * density;
}

}  // namespace windwall::solve
