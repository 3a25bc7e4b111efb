// What is kept and told of a drive on its way.
#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"
#include "windwall/solve/answer/limits.hpp"
#include "windwall/solve/drive/run.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double event_time = 1e-7;  // s, to which limits are found
constexpr double mark_time = 1e-9;   // s
constexpr double rounding = 1e-9;    // of a mark, and of a metre or a metre a second

}  // namespace

/// A part is called by a name of the motion's own vehicle, which ends with the run: that of the
/// vehicle which is driven stays.
std::string_view Run::lasting(std::string_view name) const {
    for (const auto& entry : vehicle_.charge_path)
        if (entry.id == name) return entry.id;
    for (const auto& entry : vehicle_.driveline)
        if (entry.id == name) return entry.id;
    return name;
}

void Run::note(Happening what) {
    const double engine_speed = moment(state_).engine_speed;
    result_.events.push_back({what, time_, state_[Layout::distance], speed(), engine_speed,
                              about(what), 0, static_cast<long>(leg_) + 1,
                              static_cast<long>(mode_.gear) + 1});
}

/// The kind of the part that takes hold, or is asked for more than it holds at an open pedal. What
/// the wheels drag along may come apart anywhere.
std::string Run::about(Happening what) const {
    const bool pulls = mode_.phase == Phase::driving && mode_.pedal > 0;
    if (what != Happening::clutch_grips && !(what == Happening::clutch_slips && pulls)) return {};
    const auto at = driveline::parting(vehicle_.driveline);
    return at ? std::string(vehicle_.driveline[*at].part.kind()) : std::string();
}

void Run::keep(double time, const State& state) {
    if (time == kept_at_) return;
    const Moment& now = moment(state);
    record_.look(mode_, now, state, motion_, motion_.solver().balance());
    record_.keep(time, mode_, now, state, motion_);
    note_limits(std::max(kept_at_, dense_from_), time, state);
    kept_at_ = time;
}

double Run::limited(std::size_t limit, double time) {
    State state;
    integrator_.state_at(time, state);
    record_.look(mode_, moment(state), state, motion_, motion_.solver().balance());
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

/// Whether the vehicle is driven, and does not roll out or brake.
bool Run::driven() const {
    switch (mode_.phase) {
        case Phase::slipping:
        case Phase::shifting:
        case Phase::holding: return true;
        case Phase::driving: return mode_.pedal > 0;
        default: return false;
    }
}

bool Run::marked(std::optional<double> distance, std::optional<double> speed) const {
    return std::ranges::any_of(result_.marks, [&](const Mark& mark) {
        return mark.run == run_ && mark.at_distance == distance && mark.at_speed == speed;
    });
}

/// Distances and speeds that were waited for, found between two times of the last step: the first
/// time in a run that each is driven to. One that is rolled past behind it is no result.
void Run::note_marks(double from, double to) {
    if (run_ == 0 || !driven()) return;
    State before, behind, there;
    integrator_.state_at(from, before);
    integrator_.state_at(to, behind);
    const auto look = [&](std::size_t at, double offset, const std::vector<double>& wanted,
                          bool distance) {
        for (const double mark : wanted) {
            // A leg that ends at a mark ends there but for what is rounded.
            const double goal = (mark + offset) - rounding * std::max(1.0, mark + offset);
            if (!(before[at] < goal && behind[at] >= goal)) continue;
            const std::optional<double> place = distance ? std::optional(mark) : std::nullopt;
            const std::optional<double> pace = distance ? std::nullopt : std::optional(mark);
            if (marked(place, pace)) continue;
            const auto gap = [&](double time) {
                integrator_.state_at(time, there);
                return there[at] - goal;
            };
            const double time = numerics::find_root(gap, from, to, {mark_time, 0, 80}).x;
            integrator_.state_at(time, there);
            result_.marks.push_back({run_, place, pace, time - run_start_time_,
                                     there[Layout::distance] - run_start_distance_,
                                     there[Layout::road_speed]});
        }
    };
    look(Layout::distance, run_start_distance_, options_.mark_distances, true);
    look(Layout::road_speed, 0, options_.mark_speeds, false);
}

}  // namespace windwall::solve
