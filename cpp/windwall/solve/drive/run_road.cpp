// Where along the road a run is, and which way it goes.
#include "windwall/solve/drive/run.hpp"

#include <algorithm>

namespace windwall::solve {

Place Run::place(double distance) const {
    const double at = road_from_ + direction_ * distance;
    return {direction_ * (grade_ ? grade_->at(at).value : vehicle_.goal.grade),
            direction_ * (headwind_ ? headwind_->at(at).value : vehicle_.day.headwind)};
}

/// m of road that a run has: behind the line, or where it comes back, before it.
double Run::road_ahead() const {
    return direction_ > 0 ? *outing_.road_length - road_from_ : road_from_;
}

/// m since it set out, to where the slope or the wind of the road turns next.
std::optional<double> Run::next_turn() const {
    if (!grade_) return std::nullopt;
    std::optional<double> next;
    for (const double place : outing_.road.column[0]) {
        const double ahead = direction_ * (place - road_from_);
        if (ahead > run_distance() + 1e-6) next = std::min(next.value_or(ahead), ahead);
    }
    if (next) *next += run_start_distance_;
    return next;
}

/// No step goes over a place where the slope or the wind of the road turns.
void Run::watch_road() {
    const auto next = next_turn();
    if (!next) return;
    guards_.push_back({Guard::Then::happens,
                       Happening::road_turns,
                       {},
                       0,
                       [at = *next](double, auto state) { return state[Layout::distance] - at; },
                       {}});
}

}  // namespace windwall::solve
