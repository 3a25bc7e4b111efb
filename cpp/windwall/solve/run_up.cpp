#include "windwall/solve/run_up.hpp"

#include "windwall/numerics/root.hpp"

#include <array>
#include <cmath>

namespace windwall::solve {
namespace {

// The speed that is approached is never reached, so the road is measured out in u with
// v = summit (1 - e^-u): equal steps of u close equal shares of the gap that is left.
constexpr double step = 0.1;
constexpr double last = 25;  // the gap left is then 1e-11 of the speed

/// Gauss-Legendre points and weights on [0, 1].
constexpr std::array<double, 3> points{0.1127016653792583, 0.5, 0.8872983346207417};
constexpr std::array<double, 3> weights{5.0 / 18, 8.0 / 18, 5.0 / 18};

struct Best {
    double acceleration;
    std::size_t gear;
};

Best best_gear(const Puller& puller, const std::vector<GearCurve>& curves, double road_speed) {
    const double load = puller.load(road_speed).total();
    Best best{0, 0};
    for (const GearCurve& curve : curves) {
        if (!curve.reaches(road_speed)) continue;
        const double acceleration =
            (curve.thrust(road_speed) - load) / puller.accelerated_mass(curve.gear());
        if (acceleration > best.acceleration) best = {acceleration, curve.gear()};
    }
    return best;
}

struct Stretch {
    double distance = 0;
    double time = 0;
};

/// Road and time spent between two values of u.
Stretch between(const Puller& puller, const std::vector<GearCurve>& curves, double summit,
                double from, double to) {
    Stretch stretch;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double gap = summit * std::exp(-(from + (to - from) * points[i]));
        const double speed = summit - gap;
        const double acceleration = best_gear(puller, curves, speed).acceleration;
        const double time = weights[i] * (to - from) * gap / acceleration;
        stretch.time += time;
        stretch.distance += speed * time;
    }
    return stretch;
}

}  // namespace

RunUp run_up(const Puller& puller, const std::vector<GearCurve>& curves, double summit,
             double distance) {
    RunUp run{summit, 0, 0};
    double covered = 0;
    for (double u = 0; u < last; u += step) {
        const Stretch next = between(puller, curves, summit, u, u + step);
        if (!std::isfinite(next.distance)) break;
        if (covered + next.distance >= distance) {
            const auto excess = [&](double share) {
                return covered - distance +
                       between(puller, curves, summit, u, u + share * step).distance;
            };
            const double share = numerics::find_root(excess, 0, 1).x;
            run.speed = summit * (1 - std::exp(-(u + share * step)));
            run.time += between(puller, curves, summit, u, u + share * step).time;
            break;
        }
        covered += next.distance;
        run.time += next.time;
    }
    run.gear = best_gear(puller, curves, run.speed).gear;
    return run;
}

}  // namespace windwall::solve
