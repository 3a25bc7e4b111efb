#include "windwall/solve/drive/run.hpp"

#include "windwall/charge/spray_in_time.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double first_step = 0.02;           // s, tried behind an event
constexpr double step_on_hills = 1e-3;        // s, where slope or wind turn within a metre
constexpr double event_time = 1e-7;           // s, to which events are found
constexpr double longest_moving = 5;          // s, of one step
constexpr double longest_standing = 60;       // s
constexpr std::array looks{0.25, 0.5, 0.75};  // within a step, for what undoes itself

std::optional<numerics::Table> road_table(const fields::Columns& road, std::size_t column) {
    if (road.empty() || road.column.size() <= column || road.column[0].size() < 2)
        return std::nullopt;
    return numerics::Table(road.column[0], road.column[column]);
}

}  // namespace

Run::Run(const vehicle::Vehicle& vehicle, const vehicle::Outing& outing,
         const DriveOptions& options)
    : vehicle_(vehicle),
      outing_(outing),
      options_(options),
      motion_(vehicle),
      integrator_(options.tolerance),
      record_(drive_limits(vehicle, options.limits)),
      shifts_(shift_speeds(vehicle)),
      grade_(road_table(outing.road, 1)),
      headwind_(road_table(outing.road, 2)),
      shift_time_(outing.shift_time.value_or(driveline::shift_time(vehicle.driveline))),
      rev_limit_(vehicle::speed_limit(vehicle)),
      launch_speed_(outing.launch_speed.value_or(vehicle::launch_speed(vehicle))),
      beyond_(record_.limits().size(), false) {}

DriveResult Run::go() {
    if (set_out()) drive_legs();
    result_.outcome.worst = lasting(result_.outcome.worst);
    return std::move(result_);
}

void Run::drive_legs() {
    result_.kinetic_before = motion_.kinetic_energy(mode_, state_);
    Verdict verdict = Verdict::leg_done;
    for (leg_ = 0; leg_ < outing_.legs.size() && verdict != Verdict::drive_ends; ++leg_) {
        const auto told = static_cast<std::ptrdiff_t>(result_.events.size());
        begin(outing_.legs[leg_]);
        note(Happening::leg_begins);
        std::rotate(result_.events.begin() + told, result_.events.end() - 1, result_.events.end());
        verdict = drive_leg();
    }
    if (broken_) result_.end = DriveEnd::no_answer;
    if (result_.end != DriveEnd::no_answer) result_.outcome = {};
    result_.kinetic_after = motion_.kinetic_energy(mode_, state_);
    for (std::size_t i = 0; i < energies; ++i)
        result_.energy[i] = 1000 * state_[Layout::first_energy + i];
    result_.points = motion_.points();
    std::ranges::stable_sort(result_.events, {}, &DriveEvent::time);
    record_.hand_over(result_);
}

/// The state that the vehicle sets out with; false where its engine has no answer at all.
bool Run::set_out() {
    const bool answered = motion_.set_out(outing_.starts, state_);
    mode_.pumps.assign(motion_.layout().pumps.size(), {});
    for (std::size_t k = 0; k < mode_.pumps.size(); ++k)
        rest_line(k);
    if (answered) return true;
    result_.end = DriveEnd::no_answer;
    result_.outcome = motion_.moment().point.outcome;
    return false;
}

const Moment& Run::moment(std::span<const double> state) {
    const Moment& now =
        motion_.at(mode_, place(state[Layout::distance] - run_start_distance_), state);
    if (!now.answered) {
        broken_ = true;
        result_.outcome = now.point.outcome;
    }
    return now;
}

void Run::rates(double, std::span<const double> state, std::span<double> rate) {
    ++result_.evaluations;
    motion_.rates(moment(state), state, rate);
}

/// Goes on in another mode: what the crank gives or takes meanwhile is noted.
void Run::set(const Mode& mode) {
    const double before = state_.empty() ? 0 : motion_.kinetic_energy(mode_, state_);
    const std::vector<PumpMode> pumps = mode_.pumps;
    const bool dry = mode_.dry;
    const double position = position_kept(mode);
    mode_ = mode;
    mode_.position = position;
    mode_.pumps = pumps;
    mode_.dry = dry;
    result_.changed += before - motion_.kinetic_energy(mode_, state_);
    GuardContext context{&motion_,   &shifts_.up,       outing_.shift_speed,
                         rev_limit_, shifts_.up.size(), mode.pedal > 0 && !mode.stays};
    guards_ = guards_of(mode_, context);
    if (mode.phase == Phase::shifting)
        guards_.push_back({Guard::Then::happens,
                           Happening::shift_ends,
                           {},
                           0,
                           [end = time_ + shift_time_](double time, auto) { return time - end; },
                           {}});
    if (outing_.road_length && mode.phase != Phase::standing && mode.phase != Phase::engine_off)
        guards_.push_back({Guard::Then::drive_ends,
                           {},
                           DriveEnd::road_ends,
                           0,
                           [end = run_start_distance_ + road_ahead()](double, auto state) {
                               return state[Layout::distance] - end;
                           },
                           {}});
    if (outing_.fuel_on_board)
        guards_.push_back({Guard::Then::drive_ends,
                           {},
                           DriveEnd::tank_empty,
                           0,
                           [all = 1000 * *outing_.fuel_on_board * vehicle_.fuel.density()](
                               double, auto state) { return state[Layout::fuel_used] - all; },
                           {}});
    add_pump_guards(guards_, mode_, motion_.layout());
    if (outing_.liquid_on_board && !mode_.dry)
        guards_.push_back({Guard::Then::happens,
                           Happening::liquid_empty,
                           {},
                           0,
                           [all = liquid_on_board()](double, auto state) {
                               return state[Layout::liquid_used] - all;
                           },
                           {}});
    watch_road();
    integrator_.start(time_, state_, grade_ ? step_on_hills : first_step);
    dense_from_ = time_;
}

Run::Verdict Run::drive_leg() {
    keep(time_, state_);
    leg_begun_ = time_;
    steps_before_ = result_.steps;
    for (Verdict verdict = Verdict::leg_goes_on;;) {
        verdict = step();
        if (verdict != Verdict::leg_goes_on) return verdict;
        if (too_long()) {
            result_.end = DriveEnd::too_long;
            return Verdict::drive_ends;
        }
    }
}

/// One step, as far as nothing happens in it.
Run::Verdict Run::step() {
    if (options_.go_on && !options_.go_on(time_)) {
        result_.end = DriveEnd::cancelled;
        return Verdict::drive_ends;
    }
    for (const auto* guards : {&guards_, &leg_guards_})
        for (const Guard& guard : *guards)
            if (!passed_over(guard) && value(guard, time_, state_) >= 0)
                return happens(Guard(guard));
    const bool stands = mode_.phase == Phase::standing || mode_.phase == Phase::engine_off;
    ++result_.steps;
    if (!advance(stands ? longest_standing : longest_moving)) {
        result_.end = DriveEnd::no_answer;
        return Verdict::drive_ends;
    }
    dense_from_ = integrator_.before();
    const auto passed = first_passed();
    const double from = time_, to = passed ? passed->second : integrator_.time();
    note_marks(from, to);
    for (double at = kept_at_ + (stands ? options_.every_standing : options_.every); at < to;
         at = kept_at_ + (stands ? options_.every_standing : options_.every)) {
        State between;
        integrator_.state_at(std::max(at, from), between);
        keep(std::max(at, from), between);
    }
    integrator_.state_at(to, state_);
    time_ = to;
    if (passed) return happens(Guard(*passed->first));
    keep(time_, state_);
    if (const auto end = gets_nowhere()) {
        result_.end = *end;
        return Verdict::drive_ends;
    }
    return Verdict::leg_goes_on;
}

double Run::value(const Guard& guard, double time, const State& state) {
    return guard.of_state ? guard.of_state(time, state) : guard.of_moment(moment(state));
}

/// Of all guards that are passed within the last step, the one that is passed first.
std::optional<std::pair<const Guard*, double>> Run::first_passed() {
    std::optional<std::pair<const Guard*, double>> first;
    const double from = integrator_.before(), to = integrator_.time();
    double before = from;
    State state;
    std::vector<double> times;
    for (const double look : looks)
        times.push_back(from + look * (to - from));
    times.push_back(to);
    for (const double now : times) {
        integrator_.state_at(now, state);
        for (const auto* guards : {&guards_, &leg_guards_})
            for (const Guard& guard : *guards) {
                if (passed_over(guard) || !(value(guard, now, state) >= 0)) continue;
                const double at = crossing(guard, before, now);
                if (!first || at < first->second) first = {&guard, at};
            }
        if (first) return first;
        before = now;
    }
    return first;
}

double Run::crossing(const Guard& guard, double from, double to) {
    State state;
    double passed = to;  // the first time at which it was seen to be
    const auto number = [&](double time) {
        integrator_.state_at(time, state);
        const double found = value(guard, time, state);
        if (found >= 0) passed = std::min(passed, time);
        return found;
    };
    if (number(from) >= 0) return from;
    numerics::find_root(number, from, to, {event_time, 0, 60});
    return passed;
}

Run::Verdict Run::happens(const Guard& guard) {
    if (const auto end = chatters()) {
        result_.end = *end;
        return Verdict::drive_ends;
    }
    keep(time_, state_);
    switch (guard.then) {
        case Guard::Then::drive_ends: result_.end = guard.end; return Verdict::drive_ends;
        case Guard::Then::happens: return react(guard);
        case Guard::Then::speed_reached: hold(); return Verdict::leg_goes_on;
        case Guard::Then::leg_done: break;
    }
    if (guard.what == Happening::clutch_grips) react(guard);
    return Verdict::leg_done;
}

}  // namespace windwall::solve
