#include "windwall/solve/point/series_bracket.hpp"

#include "windwall/numerics/newton.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace windwall::solve {
namespace {

using numerics::Bracket;
using numerics::find_root;
using vehicle::Balance;

constexpr double least_pressure = 50;   // Pa
constexpr double most_pressure = 20e5;  // Pa
constexpr double most_flow = 3.0;       // kg/s of dry air, far beyond any engine this is for
constexpr double least_flow = 1e-7;     // kg/s
constexpr double balanced = 1e-6;       // of the flow; Newton's method finishes from there
constexpr double flow_step = 0.85;      // of a scan down the flows
constexpr int most_halvings = 80;       // of an edge, until no number lies inside it

/// A flow taken to the manifold. Where a valve cannot pass it the march is not feasible.
struct March {
    bool feasible = true;
    std::size_t sonic = 0;  // unknown of the first valve that cannot pass the flow, or 0
    double residual = -1;   // of the engine
};

class Series {
public:
    Series(Balance& balance, std::span<double> x, int budget)
        : balance_(balance), x_(x), budget_(budget) {}

    /// Residual of the engine at this flow; the pressures behind held valves are given.
    March at(double dry_air) {
        if (spent()) return {.feasible = false};
        March propagate;
        const media::Stream manifold = balance_.propagate(
            dry_air, [&](const auto& part, const media::Stream& inlet, std::size_t k) {
                const double pressure = held_[k] > 0 ? held_[k] : behind(part, inlet, k, propagate);
                behind_[k] = pressure;
                x_[k] = Balance::unknown(part, inlet, pressure);
                return pressure;
            });
        x_[balance_.flow()] = std::log(dry_air);
        ++calls_;
        if (propagate.feasible) propagate.residual = balance_.engine_flow_ratio(manifold) - 1;
        return propagate;
    }
    /// Holds the pressure behind a valve in the marches to come.
    void hold(std::size_t k, double pressure) { held_[k] = pressure; }
    int calls() const { return calls_; }
    bool spent() const { return calls_ >= budget_; }
    double behind_valve(std::size_t k) const { return behind_[k]; }

private:
    /// The pressure behind a valve or blower at which it passes exactly the flow that arrives.
    template <class Part>
    double behind(const Part& part, const media::Stream& inlet, std::size_t k, March& propagate) {
        const auto excess = [&](double log_pressure) {
            ++calls_;
            return balance_.capacity(part, inlet, std::exp(log_pressure)) / inlet.gas_flow() - 1;
        };
        const double low = std::log(least_pressure);
        const double no_drop = inlet.pressure * (1 - 1e-12);
        const double high = std::log(charge::Driven<Part> ? most_pressure : no_drop);
        const Bracket ends{low, high, excess(low), excess(high), 2};
        if (ends.residual_low < 0) {
            if (propagate.feasible) propagate.sonic = k;
            propagate.feasible = false;
            return std::exp(high);
        }
        if (ends.residual_high > 0) return std::exp(high);
        return std::exp(find_root(excess, ends, {1e-13, 1e-13, 80}).x);
    }

    Balance& balance_;
    std::span<double> x_;
    int budget_;
    std::array<double, numerics::most_unknowns> behind_{};
    std::array<double, numerics::most_unknowns> held_{};
    int calls_ = 0;
};

/// The largest flow that every valve passes while the engine would draw more, and the next larger
/// one tried, where it would not or where a valve is sonic.
struct Edge {
    double drawn;
    double refused;
    March beyond;
};

std::optional<Edge> scan_down(Series& series) {
    double larger = most_flow;
    March beyond = series.at(larger);
    for (double flow = larger * flow_step; flow > least_flow; flow *= flow_step) {
        const March here = series.at(flow);
        if (here.feasible && here.residual > 0) return Edge{flow, larger, beyond};
        larger = flow;
        beyond = here;
    }
    return std::nullopt;
}

/// Narrows an edge behind which a valve is sonic to the valve's own flow.
double sonic_flow(Series& series, Edge& edge) {
    for (int i = 0; i < most_halvings && edge.refused / edge.drawn - 1 > 1e-14; ++i) {
        const double middle = std::sqrt(edge.drawn * edge.refused);
        if (middle <= edge.drawn || middle >= edge.refused) break;
        const March propagate = series.at(middle);
        if (propagate.feasible && propagate.residual <= 0) {  // balanced before it is sonic
            edge.refused = middle;
            return 0;
        }
        (propagate.feasible ? edge.drawn : edge.refused) = middle;
        if (!propagate.feasible) edge.beyond = propagate;
    }
    return edge.drawn;
}

bool close_flow(Series& series, double drawn, double refused) {
    const auto residual = [&](double log_flow) { return series.at(std::exp(log_flow)).residual; };
    const auto root = find_root(residual, std::log(drawn), std::log(refused), {1e-14, 1e-14, 120});
    series.at(std::exp(root.x));
    return root.converged;
}

/// The valve is sonic and sets the flow; the engine sets the pressure behind it. Where a further
/// valve would be sonic below a certain pressure, that pressure stands between the two, and the
/// engine's is behind the further one.
bool close_behind_sonic(Series& series, double flow, std::size_t valve) {
    for (std::size_t further = 0; further < numerics::most_unknowns; ++further) {
        March lower;
        const auto residual = [&](double log_pressure) {
            series.hold(valve, std::exp(log_pressure));
            const March propagate = series.at(flow);
            if (!propagate.feasible) lower = propagate;
            return propagate.residual;
        };
        const double critical = series.behind_valve(valve);
        const auto root =
            find_root(residual, std::log(least_pressure), std::log(critical), {1e-14, 1e-14, 120});
        if (!root.converged) return false;
        if (std::abs(residual(root.x)) < balanced || lower.sonic <= valve) return true;
        // The least pressure that the further valve can live with, a rounding above the edge.
        series.hold(valve, std::exp(root.x + 1e-13));
        series.at(flow);
        valve = lower.sonic;
    }
    return false;
}

Outcome unanswered(const Series& series, Status status, std::string_view worst) {
    return {status, worst, 1, series.calls()};
}

}  // namespace

Outcome bracket_series(Balance& balance, std::span<double> x, int budget) {
    Series series(balance, x, budget);
    std::optional<Edge> edge = scan_down(series);
    if (!edge && !series.spent())
        return unanswered(series, Status::no_survivable_state, nothing_flows);

    bool closed = false;
    if (series.spent()) {
        closed = false;
    } else if (edge->beyond.feasible) {
        closed = close_flow(series, edge->drawn, edge->refused);
    } else if (const double flow = sonic_flow(series, *edge); flow > 0) {
        const std::size_t valve = edge->beyond.sonic;
        series.at(flow);
        closed = close_behind_sonic(series, flow, valve);
    } else {
        closed = close_flow(series, edge->drawn, edge->refused);
    }
    if (!closed || series.spent()) return unanswered(series, Status::not_converged, nothing_flows);
    return {Status::solved, nothing_flows, 0, series.calls()};
}

}  // namespace windwall::solve
