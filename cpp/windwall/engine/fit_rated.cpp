#include "windwall/engine/fit_rated.hpp"

#include "windwall/engine/stock.hpp"
#include "windwall/fields/field_path.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double printed_to = 0.025;  // of a figure, between engines of one model
constexpr int rounds = 60;
constexpr double step = 1e-3;  // of a sigma, for a slope
constexpr double settled_at = 1e-6;
constexpr double farthest = 1;  // sigmas in one round

constexpr std::string_view free_list[] = {"breathing/peak_efficiency",    "breathing/best_speed",
                                          "breathing/fall_off",           "friction/scale",
                                          "combustion/real_cycle_factor", "exhaust/back_pressure"};

/// Torque and power are the same thing twice: at most two numbers to be met.
using Pair = std::array<double, 2>;

struct Problem {
    Cylinder& engine;
    const media::Fuel& fuel;
    std::vector<MovedInput>& inputs;
    std::vector<RatedFigure>& figures;
    std::vector<fields::FieldPath> paths;  // of the inputs

    double& at(std::size_t input) { return paths[input].at(&engine); }

    /// By so many sigmas, within its range; whether it met the end of that.
    bool move(std::size_t input, double sigmas) {
        const FreeInput& known = inputs[input].input;
        const double there = at(input) + sigmas * known.known.sigma;
        at(input) = std::clamp(there, known.low, known.high);
        return at(input) != there;
    }

    double speed_of(const RatedFigure& figure) const {
        const Rated& rated = *engine.rated;
        return figure.key == "torque" ? *rated.torque_speed : *rated.power_speed;
    }

    Pair predicted() const {
        const Cylinder stock = stock_of(engine);
        Pair made{};
        for (std::size_t k = 0; k < figures.size(); ++k) {
            const double speed = speed_of(figures[k]);
            const Intake intake = full_throttle(stock, fuel, speed, stock.rated->temperature);
            const Work work = stock.work(intake, fuel, 0);
            made[k] = figures[k].key == "torque" ? work.torque() : work.power();
        }
        return made;
    }

    /// By how much each figure moves for a sigma of an input.
    Pair slope(std::size_t input) {
        const double here = at(input), sigma = inputs[input].input.known.sigma;
        at(input) = here + step * sigma;
        const Pair up = predicted();
        at(input) = here - step * sigma;
        const Pair down = predicted();
        at(input) = here;
        return {(up[0] - down[0]) / (2 * step), (up[1] - down[1]) / (2 * step)};
    }
};

/// A symmetric 2 by 2 matrix with the inverse applied to a pair; one figure leaves the other at 1.
struct Normal {
    double a, b, d;
    Pair solve(const Pair& v) const {
        const double det = a * d - b * b;
        return {(d * v[0] - b * v[1]) / det, (a * v[1] - b * v[0]) / det};
    }
};

/// Inputs in sigmas from what they were known to be.
double sigmas_of(Problem& problem, std::size_t input) {
    const Estimate& known = problem.inputs[input].input.known;
    return (problem.at(input) - known.value) / known.sigma;
}

Normal normal_of(const std::vector<Pair>& slopes, const std::vector<RatedFigure>& figures,
                 const std::vector<bool>& held) {
    Normal made{1, 0, 1};
    const auto variance = [&](std::size_t k) {
        return k < figures.size() ? figures[k].sigma * figures[k].sigma : 1.0;
    };
    made.a = variance(0);
    made.d = variance(1);
    for (std::size_t i = 0; i < slopes.size(); ++i) {
        if (held[i]) continue;
        made.a += slopes[i][0] * slopes[i][0];
        made.b += slopes[i][0] * slopes[i][1];
        made.d += slopes[i][1] * slopes[i][1];
    }
    return made;
}

/// One step of Gauss and Newton, in the space of the figures; returns the largest move in sigmas
/// that it asks for, and goes no farther at once than the slopes may be trusted.
double improve(Problem& problem, std::vector<Pair>& slopes, std::vector<bool>& held) {
    const std::size_t count = problem.inputs.size();
    Pair wanted = problem.predicted();
    for (std::size_t k = 0; k < problem.figures.size(); ++k)
        wanted[k] = problem.figures[k].rated - wanted[k];
    for (std::size_t i = 0; i < count; ++i) {
        slopes[i] = problem.slope(i);
        if (held[i]) continue;
        for (std::size_t k = 0; k < problem.figures.size(); ++k)
            wanted[k] += slopes[i][k] * sigmas_of(problem, i);
    }
    const Pair weights = normal_of(slopes, problem.figures, held).solve(wanted);
    std::vector<double> moves(count, 0);  // in sigmas
    double largest = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (held[i]) continue;
        moves[i] = slopes[i][0] * weights[0] + slopes[i][1] * weights[1] - sigmas_of(problem, i);
        largest = std::max(largest, std::abs(moves[i]));
    }
    const double share = std::min(1.0, farthest / largest);
    for (std::size_t i = 0; i < count; ++i)
        if (moves[i] != 0) held[i] = problem.move(i, share * moves[i]);
    return largest;
}

/// What the figures leave of the inputs, in the sigmas that they were known to.
std::vector<double> covariance_left(const Problem& problem, const std::vector<Pair>& slopes,
                                    const std::vector<bool>& held) {
    const Normal normal = normal_of(slopes, problem.figures, held);
    const std::size_t count = slopes.size();
    std::vector<double> left(count * count, 0);
    for (std::size_t i = 0; i < count; ++i) {
        const Pair share = normal.solve(slopes[i]);
        left[i * count + i] = 1;
        for (std::size_t j = 0; j < count && !held[i]; ++j)
            if (!held[j]) left[i * count + j] -= slopes[j][0] * share[0] + slopes[j][1] * share[1];
    }
    return left;
}

void keep(Problem& problem) {
    for (std::size_t i = 0; i < problem.inputs.size(); ++i) {
        const FreeInput& input = problem.inputs[i].input;
        problem.at(i) = std::clamp(kept(problem.at(i)), input.low, input.high);
    }
}

void narrow(Problem& problem, const std::vector<double>& covariance) {
    const std::size_t count = problem.inputs.size();
    for (std::size_t i = 0; i < count; ++i) {
        const double sigma = problem.inputs[i].input.known.sigma;
        const double left = std::sqrt(std::max(0.0, covariance[i * count + i]));
        problem.inputs[i].met = {problem.at(i), kept(sigma * left)};
    }
}

std::vector<RatedFigure> figures_of(const Rated& rated, double torque_sigma, double power_sigma) {
    const auto figure = [](std::string_view key, double value, double sigma) {
        return RatedFigure{key, value, (sigma > 0 ? sigma : printed_to * value), 0, 0};
    };
    std::vector<RatedFigure> figures;
    if (rated.torque) figures.push_back(figure("torque", *rated.torque, torque_sigma));
    if (rated.power) figures.push_back(figure("power", *rated.power, power_sigma));
    return figures;
}

}  // namespace

bool RatedFigure::unreconciled() const noexcept { return std::abs(met - rated) > 2 * sigma; }

double RatedFit::correlation(std::size_t i, std::size_t j) const noexcept {
    const std::size_t count = inputs.size();
    if (covariance.empty()) return i == j ? 1 : 0;
    const double both = covariance[i * count + i] * covariance[j * count + j];
    return both > 0 ? kept(covariance[i * count + j] / std::sqrt(both)) : 0;
}

std::span<const std::string_view> free_addresses() { return free_list; }

RatedFit fit_rated(Cylinder& engine, const media::Fuel& fuel, std::vector<FreeInput> free,
                   double torque_sigma, double power_sigma) {
    RatedFit fit;
    fit.figures = figures_of(*engine.rated, torque_sigma, power_sigma);
    Problem problem{engine, fuel, fit.inputs, fit.figures, {}};
    for (const FreeInput& input : free) {
        fit.inputs.push_back({input, input.known});
        problem.paths.push_back(
            *fields::find_number(fields::group_type<Cylinder>, &engine, input.address));
    }
    for (std::size_t i = 0; i < fit.inputs.size(); ++i)
        problem.at(i) = fit.inputs[i].input.known.value;
    const Pair before = problem.predicted();
    std::vector<Pair> slopes(fit.inputs.size());
    std::vector<bool> held(fit.inputs.size(), false);
    for (int round = 0; round < rounds && !fit.figures.empty(); ++round)
        if (improve(problem, slopes, held) < settled_at) break;
    if (!fit.figures.empty()) {
        keep(problem);
        fit.covariance = covariance_left(problem, slopes, held);
        narrow(problem, fit.covariance);
    }
    const Pair met = problem.predicted();
    for (std::size_t k = 0; k < fit.figures.size(); ++k) {
        fit.figures[k].before = before[k];
        fit.figures[k].met = met[k];
    }
    return fit;
}

}  // namespace windwall::engine
