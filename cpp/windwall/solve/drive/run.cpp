#include "windwall/solve/drive/run.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double first_step = 1e-3;           // s, behind an event
constexpr double event_time = 1e-7;           // s, to which events are found
constexpr double longest_moving = 5;          // s, of one step
constexpr double longest_standing = 60;       // s
constexpr std::array looks{0.25, 0.5, 0.75};  // within a step, for what undoes itself
constexpr double no_longer = 1e-3;  // m/s2, where a speed that a leg waits for will not come
constexpr int most_at_once = 40;

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
      record_(limits_of(vehicle, options.limits)),
      shifts_(shift_speeds(vehicle)),
      grade_(road_table(outing.road, 1)),
      headwind_(road_table(outing.road, 2)),
      shift_time_(outing.shift_time.value_or(driveline::shift_time(vehicle.driveline))),
      rev_limit_(vehicle::speed_limit(vehicle)),
      launch_speed_(outing.launch_speed.value_or(vehicle::launch_speed(vehicle))),
      beyond_(record_.limits().size(), false) {}

DriveResult Run::go() {
    if (set_out()) {
        const double before = motion_.kinetic_energy(mode_, state_);
        result_.kinetic_before = before;
        Verdict verdict = Verdict::leg_done;
        for (leg_ = 0; leg_ < outing_.legs.size() && verdict != Verdict::drive_ends; ++leg_) {
            begin(outing_.legs[leg_]);
            note(Happening::leg_begins);
            verdict = drive_leg();
        }
    }
    result_.kinetic_after = motion_.kinetic_energy(mode_, state_);
    for (std::size_t i = 0; i < energies; ++i)
        result_.energy[i] = 1000 * state_[Layout::first_energy + i];
    result_.points = motion_.points();
    std::ranges::stable_sort(result_.events, {}, &DriveEvent::time);
    record_.hand_over(result_);
    return std::move(result_);
}

/// The state that the vehicle sets out with; false where its engine has no answer at all.
bool Run::set_out() {
    const bool answered = motion_.set_out(outing_.starts, state_);
    if (answered) return true;
    result_.end = DriveEnd::no_answer;
    result_.outcome = motion_.moment().point.outcome;
    return false;
}

Place Run::place(double distance) const {
    return {grade_ ? grade_->at(distance).value : vehicle_.goal.grade,
            headwind_ ? headwind_->at(distance).value : vehicle_.day.headwind};
}

const Moment& Run::moment(std::span<const double> state) {
    return motion_.at(mode_, place(state[Layout::distance] - run_start_distance_), state);
}

void Run::rates(double, std::span<const double> state, std::span<double> rate) {
    ++result_.evaluations;
    const Moment& now = moment(state);
    if (!now.answered) {
        broken_ = true;
        result_.outcome = now.point.outcome;
    }
    motion_.rates(now, state, rate);
}

/// Goes on in another mode: what the crank gives or takes meanwhile is noted.
void Run::set(const Mode& mode) {
    const double before = state_.empty() ? 0 : motion_.kinetic_energy(mode_, state_);
    mode_ = mode;
    result_.changed += before - motion_.kinetic_energy(mode_, state_);
    GuardContext context{&motion_,   &shifts_.up,       outing_.shift_speed,
                         rev_limit_, shifts_.up.size(), mode.pedal > 0};
    guards_ = guards_of(mode_, context);
    if (mode.phase == Phase::shifting)
        guards_.push_back({Guard::Then::happens,
                           Happening::shift_ends,
                           {},
                           [end = time_ + shift_time_](double time, auto) { return time - end; },
                           {}});
    if (outing_.road_length && mode.phase != Phase::standing && mode.phase != Phase::engine_off)
        guards_.push_back({Guard::Then::drive_ends,
                           {},
                           DriveEnd::road_ends,
                           [end = run_start_distance_ + *outing_.road_length](double, auto state) {
                               return state[Layout::distance] - end;
                           },
                           {}});
    if (outing_.fuel_on_board)
        guards_.push_back({Guard::Then::drive_ends,
                           {},
                           DriveEnd::tank_empty,
                           [all = 1000 * *outing_.fuel_on_board * vehicle_.fuel.density()](
                               double, auto state) { return state[Layout::fuel_used] - all; },
                           {}});
    watch_road();
    integrator_.start(time_, state_, first_step);
    dense_from_ = time_;
}

/// No step goes over a place where the slope or the wind of the road turns.
void Run::watch_road() {
    if (!grade_) return;
    const std::vector<double>& places = outing_.road.column[0];
    const auto next = std::ranges::upper_bound(places, run_distance() + 1e-6);
    if (next == places.end()) return;
    guards_.push_back({Guard::Then::happens,
                       Happening::road_turns,
                       {},
                       [at = run_start_distance_ + *next](double, auto state) {
                           return state[Layout::distance] - at;
                       },
                       {}});
}

Run::Verdict Run::drive_leg() {
    keep(time_, state_, true);
    for (Verdict verdict = Verdict::leg_goes_on;;) {
        verdict = step();
        if (verdict != Verdict::leg_goes_on) return verdict;
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
            if (value(guard, time_, state_) >= 0) return happens(Guard(guard));
    const bool stands = mode_.phase == Phase::standing || mode_.phase == Phase::engine_off;
    ++result_.steps;
    const bool stepped =
        integrator_.step([this](double time, std::span<const double> state,
                                std::span<double> rate) { rates(time, state, rate); },
                         stands ? longest_standing : longest_moving);
    if (!stepped || broken_) {
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
        keep(std::max(at, from), between, true);
    }
    integrator_.state_at(to, state_);
    time_ = to;
    if (passed) return happens(Guard(*passed->first));
    keep(time_, state_, true);
    if (waits_for_speed_ && mode_.phase == Phase::driving &&
        moment(state_).acceleration < no_longer && mode_.gear + 1 >= shifts_.up.size()) {
        result_.end = DriveEnd::no_more_speed;
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
                if (!(value(guard, now, state) >= 0)) continue;
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
    const auto number = [&](double time) {
        integrator_.state_at(time, state);
        return value(guard, time, state);
    };
    double low = from, high = to;
    if (number(low) >= 0) return low;
    const auto root = numerics::find_root(number, low, high, {event_time, 0, 60});
    return std::clamp(root.x, low, high);
}

Run::Verdict Run::happens(const Guard& guard) {
    at_once_ = time_ > last_event_ + event_time ? 0 : at_once_ + 1;
    last_event_ = time_;
    if (at_once_ > most_at_once) {
        result_.end = DriveEnd::too_many_events;
        return Verdict::drive_ends;
    }
    keep(time_, state_, true);
    switch (guard.then) {
        case Guard::Then::drive_ends: result_.end = guard.end; return Verdict::drive_ends;
        case Guard::Then::happens: return react(guard.what);
        case Guard::Then::leg_done: break;
    }
    if (leg_speed_ > 0) {
        hold();
        return Verdict::leg_goes_on;
    }
    if (guard.what == Happening::clutch_grips) react(guard.what);
    return Verdict::leg_done;
}

/// What follows from what happened.
Run::Verdict Run::react(Happening what) {
    Mode next = mode_;
    switch (what) {
        case Happening::clutch_grips:
            next = {.phase = Phase::driving,
                    .gear = mode_.gear,
                    .pedal = mode_.pedal,
                    .spinning = mode_.spinning};
            break;
        case Happening::clutch_slips:
            next.phase = Phase::slipping;
            next.engine_free = true;
            state_[Layout::engine_speed] = moment(state_).engine_speed;
            break;
        case Happening::shift_begins:
            next = {.phase = Phase::shifting, .gear = mode_.gear + 1, .lifted = outing_.lift};
            break;
        case Happening::shift_ends:
            note(what);
            engage(mode_.gear);
            return Verdict::leg_goes_on;
        case Happening::ratio_begins: next.stretch = 1; break;
        case Happening::ratio_ends: next.stretch = 2; break;
        case Happening::ratio_returns: next.stretch = mode_.stretch - 1; break;
        case Happening::tyres_spin: next.spinning = true; break;
        case Happening::tyres_grip: next.spinning = false; break;
        case Happening::rev_limit:
            if (waits_for_speed_) {
                note(what);
                result_.end = DriveEnd::no_more_speed;
                return Verdict::drive_ends;
            }
            if (mode_.phase == Phase::slipping) {
                next.engine_free = false;
                next.engine_speed = rev_limit_;
            } else {
                next = {.phase = Phase::holding, .gear = mode_.gear};
            }
            break;
        case Happening::stands_still: {
            note(what);
            if (!then_stand_) return stand(0, false), Verdict::leg_done;
            const auto [time, off] = *then_stand_;
            then_stand_.reset();
            stand(time, off);
            return Verdict::leg_goes_on;
        }
        case Happening::road_turns: set(next); return Verdict::leg_goes_on;
        default: break;
    }
    set(next);
    note(what);
    return Verdict::leg_goes_on;
}

void Run::note(Happening what) {
    const double engine_speed = moment(state_).engine_speed;
    result_.events.push_back({what,
                              time_,
                              state_[Layout::distance],
                              speed(),
                              engine_speed,
                              {},
                              0,
                              static_cast<long>(leg_) + 1,
                              static_cast<long>(mode_.gear) + 1});
}

void Run::keep(double time, const State& state, bool) {
    if (time == kept_at_) return;
    const Moment& now = moment(state);
    record_.look(mode_, now, motion_, motion_.solver().balance());
    record_.keep(time, mode_, now, state, motion_);
    note_limits(std::max(kept_at_, dense_from_), time, state);
    kept_at_ = time;
}

double Run::limited(std::size_t limit, double time) {
    State state;
    integrator_.state_at(time, state);
    record_.look(mode_, moment(state), motion_, motion_.solver().balance());
    return record_.limited(limit);
}

/// Limits that are passed between the last moment that was kept and this one, which was looked at.
void Run::note_limits(double from, double to, const State& state) {
    const auto& limits = record_.limits();
    std::vector<double> values(limits.size());
    for (std::size_t k = 0; k < limits.size(); ++k)
        values[k] = record_.limited(k);
    for (std::size_t k = 0; k < limits.size(); ++k) {
        const bool before = beyond_[k] != 0;
        beyond_[k] = passes(limits[k], values[k]);
        if (before || beyond_[k] == 0) continue;
        const double bound = limits[k].max.value_or(limits[k].min.value_or(0));
        const auto over = [&](double time) { return limited(k, time) - bound; };
        double at = to;
        if (from < to && !passes(limits[k], limited(k, from)))
            at = numerics::find_root(over, from, to, {event_time, 0, 60}).x;
        State there = state;
        if (at < to) integrator_.state_at(at, there);
        result_.events.push_back({Happening::limit_passed, at, there[Layout::distance],
                                  there[Layout::road_speed], moment(there).engine_speed,
                                  limits[k].address, values[k], static_cast<long>(leg_) + 1,
                                  static_cast<long>(mode_.gear) + 1});
    }
}

/// Distances and speeds that were waited for, found between two times of the last step.
void Run::note_marks(double from, double to) {
    State before, behind, there;
    integrator_.state_at(from, before);
    integrator_.state_at(to, behind);
    const auto look = [&](std::size_t at, double offset, const std::vector<double>& wanted,
                          bool distance) {
        for (const double mark : wanted) {
            const double goal = mark + offset;
            if (!(before[at] < goal && behind[at] >= goal)) continue;
            const auto gap = [&](double time) {
                integrator_.state_at(time, there);
                return there[at] - goal;
            };
            const double time = numerics::find_root(gap, from, to, {event_time / 100, 0, 80}).x;
            integrator_.state_at(time, there);
            result_.marks.push_back(
                {run_, distance ? std::optional(mark) : std::nullopt,
                 distance ? std::nullopt : std::optional(mark), time - run_start_time_,
                 there[Layout::distance] - run_start_distance_, there[Layout::road_speed]});
        }
    };
    if (run_ == 0) return;
    look(Layout::distance, run_start_distance_, options_.mark_distances, true);
    look(Layout::road_speed, 0, options_.mark_speeds, false);
}

}  // namespace windwall::solve
