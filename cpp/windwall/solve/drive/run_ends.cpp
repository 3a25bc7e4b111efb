// Where a drive does not go on, or by shorter steps only.
#include "windwall/solve/drive/run.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double no_longer = 1e-3;        // m/s2, where a speed that a leg waits for will not come
constexpr double patience = 3;            // s, for which it has to be that slow
constexpr double stalls_below = 0.1;      // m/s
constexpr double revs_up_by = 1;          // rad/s2, an engine that is on its way
constexpr long most_steps = 20000;        // of one leg
constexpr double longest_leg = 6 * 3600;  // s, on the move
constexpr double shorter = 8;             // times, where a step looks too far ahead
constexpr double shortest_step = 1e-6;    // s

}  // namespace

/// One step. Where it looks ahead to what the engine has no answer for, such as a hill behind which
/// it would roll backwards, a shorter one is tried, down to one that shows that there is none.
bool Run::advance(double longest) {
    for (double step = std::min(longest, integrator_.next_step()); step > shortest_step;
         step /= shorter) {
        const bool stepped =
            integrator_.step([this](double time, std::span<const double> state,
                                    std::span<double> rate) { rates(time, state, rate); },
                             step);
        if (stepped && !broken_) return true;
        broken_ = false;
        integrator_.start(time_, state_, step / shorter);
    }
    broken_ = true;
    return false;
}

/// Whatever happens meanwhile.
bool Run::too_long() const {
    const bool stands = mode_.phase == Phase::standing || mode_.phase == Phase::engine_off;
    return (!stands && time_ - leg_begun_ > longest_leg) ||
           result_.steps - steps_before_ > most_steps;
}

/// Why a leg will not end by itself.
std::optional<DriveEnd> Run::gets_nowhere() {
    const bool pulls =
        mode_.phase == Phase::slipping || (mode_.phase == Phase::driving && mode_.pedal > 0);
    if (pulls && unsettled()) return DriveEnd::no_answer;
    const double gain = (pulls ? 1 : -1) * moment(state_).acceleration;
    if (!(pulls || waits_for_less_) || gain >= no_longer) {
        slow_since_.reset();
        return std::nullopt;
    }
    const bool revs_up = mode_.engine_free && moment(state_).engine_acceleration > revs_up_by;
    if (pulls && speed() < stalls_below)
        return revs_up ? std::nullopt : std::optional(DriveEnd::stalled);
    // Whatever the gear: where it does not pull to its end, none that is higher is ever taken. What
    // a spray or a film that comes late takes for a moment is waited for, and so is a flatter road.
    if (!slow_since_) slow_since_ = time_;
    const bool waits = pulls ? waits_for_speed_ : waits_for_less_;
    if (!waits || next_turn() || time_ - *slow_since_ < patience) return std::nullopt;
    return pulls ? DriveEnd::no_more_speed : DriveEnd::no_less_speed;
}

}  // namespace windwall::solve
