// Of the balances of a path whose bypass is opened by the depression that it deepens itself: the
// one with the most gas going round, and whether there is another.
#include "windwall/solve/point/point.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double wide_open = 1;
constexpr double same_opening = 1e-3;  // Newton's method closes from there
constexpr double near = 0.05;          // what Newton's method may move it by
constexpr int most_passes = 20;
constexpr double another = 1e-3;  // of the charge's temperature

}  // namespace

/// Whether a bypass may stand open there, which a diaphragm works.
bool PointSolver::valves_move(const vehicle::OperatingCondition& condition) const noexcept {
    return condition.opening < wide_open &&
           balance_.diaphragm_opening(balance_.surroundings().ambient_pressure) < 1;
}

/// The valves set by what they feel, and what they feel by the balance with the valves so set, from
/// an end: an opening valve deepens what opens it, so that each pass goes on the same way and ends
/// at the first balance on it.
Outcome PointSolver::settle_valves(double felt, std::span<double> x,
                                   numerics::JacobianMemory& jacobian, int most_evaluations) {
    Outcome outcome;
    int spent = 0;
    jacobian.known = false;
    for (int pass = 0; pass < most_passes; ++pass) {
        balance_.feel(felt);
        outcome = newton(x, jacobian, most_evaluations);
        if (outcome.status != Status::solved) outcome = elsewhere(outcome, x, jacobian);
        spent += outcome.evaluations;
        const double there = balance_.manifold().pressure;
        const double before = balance_.diaphragm_opening(felt);
        const double settled = std::abs(balance_.diaphragm_opening(there) - before);
        if (outcome.status != Status::solved || settled <= same_opening) break;
        felt = there;
    }
    balance_.feel(std::nullopt);
    if (outcome.status == Status::solved) {
        const double settled = balance_.diaphragm_opening(balance_.manifold().pressure);
        outcome = newton(x, jacobian, most_evaluations);
        outcome.evaluations += spent;
        const double stands = balance_.diaphragm_opening(balance_.manifold().pressure);
        if (std::abs(stands - settled) > near) outcome.status = Status::not_converged;
    }
    if (!run_away(balance_).empty()) outcome.status = Status::no_survivable_state;
    return outcome;
}

/// With the valves set wide, from where the last point left that.
Outcome PointSolver::set_wide(std::span<double> x, std::size_t air) {
    if (wide_.warm) std::copy_n(wide_.unknowns.begin(), air, x.begin());
    balance_.feel(0);
    Outcome outcome = newton(x, wide_.jacobian, newton_evaluations);
    if (outcome.status != Status::solved) outcome = elsewhere(outcome, x, wide_.jacobian);
    balance_.feel(std::nullopt);
    wide_.warm = outcome.status == Status::solved;
    if (wide_.warm) std::copy_n(x.begin(), air, wide_.unknowns.begin());
    return outcome;
}

/// What was found, or where a valve could stand further open, the balance in which it does. None
/// does where even valves set wide ask for no more than was found.
Outcome PointSolver::most_open(const Outcome& found, std::span<double> x, std::size_t air,
                               numerics::JacobianMemory& jacobian, int most_evaluations) {
    const bool answered = found.status == Status::solved;
    const double felt =
        answered ? balance_.manifold().pressure : balance_.surroundings().ambient_pressure;
    const double stands = balance_.diaphragm_opening(felt);
    if (!valves_move(balance_.condition()) || stands >= 1) return found;
    const std::array start = state_.unknowns;
    if (!answered) balance_.guess(x);
    Outcome open = set_wide(x, air);
    int spent = found.evaluations + open.evaluations;
    const double asked = balance_.manifold().pressure;
    if (open.status == Status::solved &&
        (!answered || balance_.diaphragm_opening(asked) > stands + same_opening)) {
        open = settle_valves(asked, x, jacobian, most_evaluations);
        spent += open.evaluations;
        open.evaluations = spent;
        if (open.status == Status::solved) return open;
    }
    state_.unknowns = start;
    std::array<double, numerics::most_unknowns> there{};
    balance_.residuals(x, {there.data(), x.size()});
    return {found.status, found.worst, found.residual, spent};
}

std::optional<double> PointSolver::hotter_balance() {
    const double here = balance_.manifold().temperature;
    if (!valves_move(balance_.condition())) return std::nullopt;
    const State last = state_;
    const std::span<double> x(state_.unknowns.data(), balance_.unknowns().size());
    for (const vehicle::Loop& loop : balance_.loops())
        x[loop.flow] = 0;
    const Outcome shut = settle_valves(balance_.surroundings().ambient_pressure, x, state_.jacobian,
                                       newton_evaluations);
    const double there = balance_.manifold().temperature;
    state_ = last;
    std::array<double, numerics::most_unknowns> open{};
    balance_.residuals(x, {open.data(), x.size()});
    if (shut.status != Status::solved || there <= here * (1 + another)) return std::nullopt;
    return there;
}

}  // namespace windwall::solve
