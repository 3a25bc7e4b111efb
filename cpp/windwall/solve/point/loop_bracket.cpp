#include "windwall/solve/point/loop_bracket.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/point/series_bracket.hpp"

#include <array>
#include <cmath>
#include <limits>

namespace windwall::solve {
namespace {

using vehicle::Balance;

constexpr double most_return = 16;    // of the unknown: some hundred times the net flow
constexpr double most_forward = -14;  // of the unknown: nearly the whole flow
constexpr double scan_step = 1;
constexpr int most_settlings = 25;
constexpr int most_switchings = 8;
constexpr double plausible = 0.05;  // of the flow, what a steep balance may be off
constexpr double a_jump = 0.5;      // of the unknown
constexpr double settled = 1e-12;   // of the heat's unknown

class Network {
public:
    Network(Balance& balance, std::span<double> x, int budget)
        : balance_(balance), x_(x), budget_(budget) {}

    /// Solves all loops from number `loop` on, with what the ones before bring back held.
    Outcome close(std::size_t loop) {
        if (loop == balance_.loops().size()) return series();
        x_[balance_.loops()[loop].heat] = 0;
        double shut = excess(loop, 0);
        if (shut == 0) return last_;
        if (std::isnan(shut)) shut = 1;
        const double way = shut > 0 ? scan_step : -scan_step;
        const double end = shut > 0 ? most_return : most_forward;
        double from = 0, at_from = shut;
        for (double w = way; std::abs(w) <= std::abs(end); w += way) {
            if (spent()) break;
            const double here = excess(loop, w);
            if (std::isnan(here)) continue;
            if ((here > 0) != (shut > 0)) {
                if (narrow(loop, from, at_from, w, here) < a_jump) return last_;
                continue;  // the sign changed in a jump, not in a balance
            }
            from = w;
            at_from = here;
        }
        if (last_.answered() || spent()) last_.status = Status::not_converged;
        return last_;
    }
    int calls() const { return calls_; }

private:
    bool spent() const { return calls_ >= budget_; }

    Outcome series() {
        balance_.assume(x_);
        const Outcome outcome = bracket_series(balance_, x_, budget_ - calls_);
        calls_ += outcome.evaluations;
        return outcome;
    }

    /// What the bypass would take back less what is assumed. Where the path has no answer the
    /// charge piles up behind the blower: more would return. Not a number where the path's brackets
    /// ended beside a balance.
    double excess(std::size_t loop, double w) {
        if (spent()) return std::numeric_limits<double>::quiet_NaN();
        const std::size_t at = balance_.loops()[loop].flow;
        x_[at] = w;
        last_ = settle(loop);
        if (!last_.answered()) return 1;
        const bool beside =
            std::abs(balance_.engine_flow_ratio(balance_.manifold()) - 1) > plausible;
        if (beside) return std::numeric_limits<double>::quiet_NaN();
        return vehicle::recirculation_unknown(balance_.branch_flow(loop)) - w;
    }

    /// Repeats until the gas that returns is as warm as the gas that is taken: each pass closes the
    /// share of the gap that the net flow has in the whole, so secants shorten the way.
    Outcome settle(std::size_t loop) {
        double& heat = x_[balance_.loops()[loop].heat];
        double last = 0, last_gap = 0;
        Outcome outcome;
        for (int pass = 0; pass < most_settlings && !spent(); ++pass) {
            outcome = close(loop + 1);
            if (outcome.status != Status::solved) return outcome;
            // Repetition settles what comes back as vapour and liquid too.
            if (balance_.loops()[loop].wet) balance_.carry_shares(loop, x_);
            const double gap = balance_.branch_heat(loop) - heat;
            if (std::abs(gap) < settled) break;
            const double slope = pass > 0 ? (gap - last_gap) / (heat - last) : -1;
            last = heat;
            last_gap = gap;
            heat += slope < -1e-3 ? -gap / slope : gap;
        }
        return outcome;
    }

    /// Leaves the balance between two shares of different sign, and says how open it still is.
    double narrow(std::size_t loop, double a, double at_a, double b, double at_b) {
        const auto residual = [&](double w) {
            const double here = excess(loop, w);
            return std::isnan(here) ? at_a : here;
        };
        const numerics::Bracket ends =
            a < b ? numerics::Bracket{a, b, at_a, at_b} : numerics::Bracket{b, a, at_b, at_a};
        const auto root = numerics::find_root(residual, ends, {1e-13, 1e-13, 80});
        return std::abs(excess(loop, root.x));
    }

    Balance& balance_;
    std::span<double> x_;
    int budget_;
    Outcome last_;
    int calls_ = 0;
};

}  // namespace

Outcome bracket_network(Balance& balance, std::span<double> x, int budget) {
    Network network(balance, x, budget);
    Outcome outcome = network.close(0);
    // A pump's switch is given what it reads, and all is closed anew.
    for (int pass = 0; pass < most_switchings && outcome.answered(); ++pass) {
        if (balance.follow_switches(x) < settled) break;
        outcome = network.close(0);
    }
    outcome.evaluations = network.calls();
    return outcome;
}

}  // namespace windwall::solve
