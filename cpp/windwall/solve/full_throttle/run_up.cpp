#include "windwall/solve/full_throttle/run_up.hpp"

#include "windwall/driveline/launch.hpp"
#include "windwall/driveline/train.hpp"
#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace windwall::solve {
namespace {

// The speed that is approached is never reached, so the road is measured out in u with
// v = equilibrium (1 - e^-u): equal steps of u close equal shares of the gap that is left.
constexpr double step = 0.2;       // half of it moves the speeds of the examples by 2e-6 at most
constexpr double last = 25;        // the gap left is then 1e-11 of the speed
constexpr double shortest = 1e-9;  // to which the end of a step is known where something changes
constexpr int most_halvings = 40;  // of a step
// Where gears change at every step, all further steps are long enough to get to the end.
constexpr int usual_steps = 2000;
constexpr int most_steps = 2 * usual_steps;

/// Gauss-Legendre points and weights on [0, 1].
constexpr std::array<double, 3> points{0.1127016653792583, 0.5, 0.8872983346207417};
constexpr std::array<double, 3> weights{5.0 / 18, 8.0 / 18, 5.0 / 18};

struct Segment {
    double distance = 0;
    double time = 0;
};

/// Of the vehicle and its wheels, kg.
double rolling_mass(const vehicle::Vehicle& car) {
    return car.body.mass + car.body.rotating_mass(car.tyres.rolling_radius());
}

/// The run as a function of u.
class Run {
public:
    Run(const VehicleSolver& solver, const std::vector<TractiveEffortCurve>& curves,
        std::size_t start_gear, double equilibrium)
        : puller_(solver), curves_(curves), start_(curves[start_gear]), summit_(equilibrium) {}

    double speed(double u) const { return -summit_ * std::expm1(-u); }

    /// The curve that is used: while the clutch slips that of the start, then the one on which the
    /// vehicle accelerates most; none where it does on no curve.
    const TractiveEffortCurve* used(double u) const {
        const double v = speed(u), load = puller_.load(v).total();
        if (v < start_.low_speed() && start_.samples().front().excess_force > 0) return &start_;
        const TractiveEffortCurve* best = nullptr;
        double most = 0;
        for (const TractiveEffortCurve& curve : curves_) {
            if (!curve.reaches(v)) continue;
            const double here = acceleration(curve, v, load);
            if (here <= most) continue;
            most = here;
            best = &curve;
        }
        return best;
    }

    /// Where a step ends: before its full length if the gear or the piece of its curve changes on
    /// the way, so that no jump of thrust or mass lies inside it.
    double end_of_step(double from, const TractiveEffortCurve& curve) const {
        const double behind = std::min(from + step, end_of_piece(from, curve));
        const TractiveEffortCurve* next = used(behind);
        if (next == &curve) return behind;
        const double met = next == nullptr ? behind : change(curve, *next, from, behind);
        const bool first = used(met) != &curve && used(met - 2 * shortest) == &curve;
        return first ? met : first_change(curve, from, behind);
    }

    double at_speed(double v) const { return -std::log1p(-v / summit_); }

    /// Speed after so long without drive, from u: the road alone slows the vehicle, at about what
    /// it takes half-way.
    double coasted(double u, double time) const {
        const double mass = rolling_mass(puller_.vehicle());
        const auto slowed = [&](double v, double t) {
            return std::max(0.0, speed(u) - puller_.load(v).total() / mass * t);
        };
        return std::min(speed(u), slowed(slowed(speed(u), time / 2), time));
    }

    /// Road and time that a change into a gear takes at u: without drive, and back to the speed.
    Segment shift(const TractiveEffortCurve& into, double u, double time) const {
        const double low = coasted(u, time), v = speed(u);
        Segment lost = between(into, at_speed(low), u);
        lost.time += time;
        lost.distance += time * (low + v) / 2;
        return lost;
    }

    /// Road and time spent in one gear between two values of u.
    Segment between(const TractiveEffortCurve& curve, double from, double to) const {
        Segment segment;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const double u = from + (to - from) * points[i];
            const double gap = summit_ * std::exp(-u), v = summit_ - gap;
            const double excess_force = curve.thrust(v) - puller_.load(v).total();
            const double time =
                weights[i] * (to - from) * gap * curve.accelerated_mass(v) / excess_force;
            segment.time += time;
            segment.distance += v * time;
        }
        return segment;
    }

private:
    double acceleration(const TractiveEffortCurve& curve, double v, double load) const {
        return (curve.thrust(v) - load) / curve.accelerated_mass(v);
    }

    /// Just behind the piece of a curve that u lies on.
    double end_of_piece(double u, const TractiveEffortCurve& curve) const {
        const double end = curve.end_of_piece(curve.piece(speed(u)));
        return end < summit_ ? at_speed(end) + shortest : u + step;
    }

    /// Just behind where another curve comes to accelerate more, or this one ends.
    double change(const TractiveEffortCurve& curve, const TractiveEffortCurve& next, double from,
                  double behind) const {
        const double high = curve.high_speed();
        const double end = high < summit_ ? std::min(behind, at_speed(high)) : behind;
        const auto lead = [&](double u) {
            const double v = speed(u), load = puller_.load(v).total();
            return acceleration(next, v, load) - acceleration(curve, v, load);
        };
        const auto root = numerics::find_root(lead, from, end, {0.1 * shortest, 0, most_halvings});
        return std::min(behind, (root.converged ? root.x : end) + shortest);
    }

    /// The same by halving, where curves change more than once on the way.
    double first_change(const TractiveEffortCurve& curve, double from, double behind) const {
        for (int i = 0; i < most_halvings && behind - from > shortest; ++i) {
            const double middle = 0.5 * (from + behind);
            (used(middle) == &curve ? from : behind) = middle;
        }
        return behind;
    }

    const VehicleSolver& puller_;
    const std::vector<TractiveEffortCurve>& curves_;
    const TractiveEffortCurve& start_;
    double summit_;
};

/// Where within a step the road ends.
double road_end(const Run& run, const TractiveEffortCurve& used, double from, double to,
                double road) {
    const auto excess = [&](double u) { return run.between(used, from, u).distance - road; };
    return numerics::find_root(excess, from, to).x;
}

}  // namespace

std::size_t start_gear(const VehicleSolver& solver, const FullLoadCurve& engine) {
    const vehicle::Vehicle& car = solver.vehicle();
    const double speed = solver.gear_range(0).at(0).engine_speed;
    const double radius = car.tyres.rolling_radius();
    const double mass = rolling_mass(car);
    return driveline::launch_gear(car.driveline, {{speed, engine.torque(speed, 0)},
                                                  car.tyres.grip_limit(car.body.mass) * radius,
                                                  mass * radius * radius,
                                                  solver.load(0).total() * radius});
}

RunUp run_up(const VehicleSolver& solver, const std::vector<TractiveEffortCurve>& curves,
             std::size_t start_gear, double equilibrium, double distance) {
    const Run run(solver, curves, start_gear, equilibrium);
    RunUp reached{equilibrium, 0, 1, 1};
    const TractiveEffortCurve* used = run.used(0);
    if (used != nullptr) reached.start_gear = static_cast<long>(used->gear()) + 1;
    const double shift_time = driveline::shift_time(solver.vehicle().driveline);
    long highest = reached.start_gear;  // so far; gears equally good are not changed to and fro
    double covered = 0;
    double u = 0, next = 0;
    for (int i = 0; i < most_steps && u < last && used != nullptr; ++i, u = next) {
        const long gear = static_cast<long>(used->gear()) + 1;
        if (gear > highest && shift_time > 0) {
            const Segment lost = run.shift(*used, u, shift_time);
            if (covered + lost.distance >= distance) {
                reached.time += lost.time * (distance - covered) / lost.distance;
                reached.speed = run.speed(u);
                return reached;
            }
            covered += lost.distance;
            reached.time += lost.time;
        }
        reached.gear = gear;
        highest = std::max(highest, gear);
        const double least = i < usual_steps ? 0 : last / usual_steps;
        next = std::max(run.end_of_step(u, *used), u + least);
        const Segment segment = run.between(*used, u, next);
        if (covered + segment.distance >= distance) {
            const double end = road_end(run, *used, u, next, distance - covered);
            reached.speed = run.speed(end);
            reached.time += run.between(*used, u, end).time;
            return reached;
        }
        covered += segment.distance;
        reached.time += segment.time;
        if (next != u + step) used = run.used(next);  // a whole step stays on its curve
    }
    // The rest of the road at the speed that is not exceeded.
    if (equilibrium > 0) reached.time += (distance - covered) / equilibrium;
    return reached;
}

}  // namespace windwall::solve
