// How a speed is held: in which gear, and what is done where it is lost or gained.
#include "windwall/solve/drive/run.hpp"
#include "windwall/solve/part_load/held_speed.hpp"
#include "windwall/solve/part_load/idle.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double moving = 0.02;      // m/s
constexpr double looks_each = 0.95;  // of a speed, from where on a lower gear may do more
constexpr double reserve = 0.05;     // m/s2, that makes up for what a change of gear costs
constexpr double rounding = 1e-6;

}  // namespace

void Run::begin(const vehicle::HoldSpeed& leg) {
    leg_speed_ = leg.speed;
    if (std::abs(speed() - leg.speed) <= moving) return hold();
    const bool faster = speed() > leg.speed;
    if (faster)
        set({.phase = Phase::coasting, .gear = mode_.gear});
    else
        full_throttle();
    waits_for_speed_ = !faster;
    waits_for_less_ = faster;
    until_held(faster);
}

/// Until the speed that the leg holds is come to.
void Run::until_held(bool falling) {
    const auto reached = Guard::Then::speed_reached;
    std::erase_if(leg_guards_, [](const Guard& guard) { return guard.then == reached; });
    until_speed(leg_speed_, falling);
    leg_guards_.back().then = reached;
}

/// The speed to hold is reached: from here, the first time, its time and its road count.
void Run::hold() {
    const auto& leg = *outing_.legs[leg_].as<vehicle::HoldSpeed>();
    std::erase_if(leg_guards_,
                  [](const Guard& guard) { return guard.then == Guard::Then::speed_reached; });
    if (!held_ && leg.for_time) until_time(*leg.for_time);
    if (!held_ && leg.for_distance) until_distance(*leg.for_distance);
    const bool let_go = held_ && mode_.phase == Phase::coasting;
    held_ = true;
    waits_for_speed_ = waits_for_less_ = false;
    const std::size_t gear = let_go ? mode_.gear : holding_gear(speed());
    if (turns_too_slowly(gear)) return end_at_once(DriveEnd::no_gear_holds);
    if (gear != mode_.gear) return shift_to(gear);
    const bool apart = let_go || mode_.phase == Phase::slipping;
    set(held_in(gear));
    if (apart) note(Happening::clutch_grips);
}

/// Slower than an engine turns with its clutch in, as where the pedal that holds a speed is asked.
bool Run::turns_too_slowly(std::size_t gear) const {
    return motion_.geared_speed({.phase = Phase::driving, .gear = gear}, speed()) <
           slowest_geared(vehicle_);
}

void Run::end_at_once(DriveEnd end) {
    leg_guards_.push_back(
        {Guard::Then::drive_ends, {}, end, 0, [](double, auto) { return 0.0; }, {}});
}

void Run::shift_to(std::size_t gear) {
    note(Happening::shift_begins);
    if (held_) until_held(false);
    set({.phase = Phase::shifting, .gear = gear, .lifted = outing_.lift});
}

/// Behind a change of gear: full throttle, but where a speed to hold was passed downhill meanwhile.
void Run::pull(std::size_t gear) {
    if (!held_ || speed() <= leg_speed_ + moving) return engage(gear);
    until_held(true);
    set(in_gear(gear, 0));
}

/// Full throttle in this gear is not enough: a lower one that could do is taken, or the one that
/// does most. Where there is none, and the engine is slower than it idles, it stalls.
Run::Verdict Run::lose_speed() {
    const bool held = mode_.phase == Phase::holding;
    if (held) note(Happening::speed_lost);
    lost_ = true;
    if (held_) until_held(false);
    const std::size_t gear = std::min(mode_.gear, holding_gear(speed()));
    if (gear != mode_.gear) {
        shift_to(gear);
        return Verdict::leg_goes_on;
    }
    Mode next = held ? in_gear(gear, 1) : mode_;
    next.looks_below = looks_below(gear);
    set(next);
    if (speed() > (1 + rounding) * idles_at(gear) || moment(state_).acceleration > 0)
        return Verdict::leg_goes_on;
    result_.end = DriveEnd::stalled;
    return Verdict::drive_ends;
}

/// Full throttle in a gear.
Mode Run::pulling(std::size_t gear) {
    Mode mode = in_gear(gear, 1);
    mode.looks_below = looks_below(gear);
    return mode;
}

/// m/s at which a gear turns the engine as fast as it idles.
double Run::idles_at(std::size_t gear) const {
    return idle_speed(vehicle_) / motion_.geared_speed({.phase = Phase::driving, .gear = gear}, 1);
}

/// m/s, slower than which a lower gear may do more, or the engine is as slow as it idles.
double Run::looks_below(std::size_t gear) const {
    const double slower = looks_each * speed(), idles = idles_at(gear);
    return speed() > (1 + rounding) * idles ? std::max(slower, idles) : slower;
}

/// Downhill the released pedal does not hold it back: until it has, the engine is dragged along.
void Run::gain_speed() {
    note(Happening::speed_gained);
    const double resumes = mode_.holds;
    Mode next = in_gear(mode_.gear, 0);
    next.resumes = resumes;
    set(next);
}

/// Whether the next gear does anything for a vehicle that has lost speed in it before.
bool Run::next_gear_pulls() { return !lost_ || gain_in(mode_.gear + 1) > reserve; }

/// Slope or wind change: what was lost before may be had again.
void Run::look_round() {
    Mode next = mode_;
    next.stays = false;
    set(next);
    if (!held_ || !lost_ || mode_.phase != Phase::holding) return;
    const std::size_t gear = std::max(mode_.gear, holding_gear(speed()));
    if (gear != mode_.gear) return shift_to(gear);
    if (speed() >= leg_speed_ - 2 * moving) return;
    until_held(false);
    engage(gear);
}

/// m/s2 that full throttle gains in a gear, here and now; below any where it has no answer.
double Run::gain_in(std::size_t gear) {
    const Moment& full = motion_.at(in_gear(gear, 1), place(run_distance()), state_);
    return full.answered ? full.acceleration : -1e9;
}

/// The first gear that does not yet give way to the next.
std::size_t Run::gear_for(double road_speed) const {
    std::size_t gear = 0;
    while (gear + 1 < shifts_.up.size()) {
        const Mode tallest{.phase = Phase::driving, .gear = gear, .stretch = 2};
        const double engine = motion_.geared_speed(tallest, road_speed);
        const double most =
            outing_.shift_speed ? std::min(*outing_.shift_speed, rev_limit_) : rev_limit_;
        const bool early = !outing_.shift_speed && road_speed >= shifts_.up[gear];
        if (engine < most && !early) break;
        ++gear;
    }
    return gear;
}

/// The highest gear in which full throttle could do more than hold a road speed; one that it is not
/// in with what makes up for the change.
std::size_t Run::holding_gear(double road_speed) {
    const std::size_t lowest = gear_for(road_speed);
    for (std::size_t gear = shifts_.up.size() - 1; gear > lowest; --gear) {
        const Mode mode{.phase = Phase::driving, .gear = gear};
        if (motion_.geared_speed(mode, road_speed) < launch_speed_) continue;
        if (gain_in(gear) > (gear == mode_.gear ? 0 : reserve)) return gear;
    }
    return lowest;
}

}  // namespace windwall::solve
