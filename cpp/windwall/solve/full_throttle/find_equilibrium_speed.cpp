#include "windwall/solve/full_throttle/find_equilibrium_speed.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/full_throttle/equilibrium_near.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double no_excess_force = 1e-6;  // N
constexpr double no_gain = 1e-9;          // of the speed
// What a curve may be wrong by: of its thrust, and of the speed where it has a step.
constexpr double doubtful_thrust = 0.02;
constexpr double doubtful_speed = 0.01;
constexpr std::size_t rounds_a_gear = 4;

double excess_force(const VehicleSolver& solver, const TractiveEffortCurve& curve,
                    double road_speed) {
    return curve.thrust(road_speed) - solver.load(road_speed).total();
}

bool faster(double speed, double than) { return speed > than * (1 + no_gain); }

/// Where the curve of one gear meets the road load, going up from a speed, or its end.
CurvePoint end_of(const VehicleSolver& solver, const TractiveEffortCurve& curve, double from) {
    const auto& samples = curve.samples();
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const CurvePoint &below = samples[i], &above = samples[i + 1];
        if (above.road_speed <= from || above.excess_force > 0) continue;
        const double start = std::max(from, below.road_speed);
        const auto excess = [&](double speed) { return excess_force(solver, curve, speed); };
        const auto root = numerics::find_root(excess, start, above.road_speed, {0, 1e-7, 60});
        const double share = (root.x - below.road_speed) / (above.road_speed - below.road_speed);
        return {below.along + share * (above.along - below.along), root.x, 0, 0, true, false};
    }
    return samples.back();
}

/// The way up through the gears of one vehicle.
class Climb {
public:
    Climb(VehicleSolver& solver, const FullLoadCurve& engine,
          std::vector<TractiveEffortCurve>& curves)
        : solver_(solver), engine_(engine), curves_(curves), exhausted_(curves.size(), false) {}

    EquilibriumSpeed up() {
        for (std::size_t i = 0; i < rounds_a_gear * curves_.size(); ++i)
            if (!goes_on()) return reached_;
        reached_.settled = false;
        return reached_;
    }

    double up_on_curves() {
        TractiveEffortCurve* gear = onward(0, nullptr);
        return gear == nullptr ? 0 : follow(gear).road_speed;
    }

private:
    /// A round ends faster than the one before, or puts a gear aside.
    bool goes_on() {
        TractiveEffortCurve* gear = onward(reached_.road_speed, nullptr);
        if (gear != nullptr) {
            const CurvePoint end = follow(gear);
            go(*gear, end.along);
        } else if (reached_.full_throttle && (gear = doubtful(reached_.road_speed))) {
            go(*gear, gear->along(reached_.road_speed));
        }
        return gear != nullptr;
    }

    /// To the end of what a gear truly has left, near a place on its curve.
    void go(TractiveEffortCurve& gear, double along) {
        const EquilibriumSpeed solved = equilibrium_near(solver_, engine_, gear.gear(), along);
        if (solved.stop != StopReason::standstill) {
            gear.pass_through(*solved.full_throttle);
            if (faster(solved.road_speed, reached_.road_speed)) {
                reached_ = solved;
                exhausted_.assign(curves_.size(), false);
            }
        }
        exhausted_[gear.gear()] = true;
    }

    /// Up through the gears on the curves alone, to where no gear has excess force.
    CurvePoint follow(TractiveEffortCurve*& gear) {
        CurvePoint end = end_of(solver_, *gear, reached_.road_speed);
        for (std::size_t i = 0; i < rounds_a_gear * curves_.size(); ++i) {
            TractiveEffortCurve* next = onward(end.road_speed, gear);
            if (next == nullptr) break;
            const CurvePoint further = end_of(solver_, *next, end.road_speed);
            if (!faster(further.road_speed, end.road_speed)) break;
            end = further;
            gear = next;
        }
        return end;
    }

    /// The gear with the largest excess force at a speed that it can still exceed, if any.
    TractiveEffortCurve* onward(double road_speed, const TractiveEffortCurve* used) {
        return best_gear(road_speed, used, [&](const TractiveEffortCurve& curve) {
            return excess_force(solver_, curve, road_speed);
        });
    }

    /// The same where the curves say that none has any, but may be wrong: in a thrust read beside
    /// a step, or in any where a throttle held back takes the torque through zero.
    TractiveEffortCurve* doubtful(double road_speed) {
        return best_gear(road_speed, nullptr, [&](const TractiveEffortCurve& curve) {
            double most = excess_force(solver_, curve, road_speed);
            for (const double share : {1 - doubtful_speed, 1 + doubtful_speed})
                most = std::max(most, excess_force(solver_, curve, share * road_speed));
            const double wrong_by = doubtful_thrust * curve.thrust(road_speed);
            return engine_.held_back() ? std::max(most, 2 * no_excess_force) : most + wrong_by;
        });
    }

    template <class Excess>
    TractiveEffortCurve* best_gear(double road_speed, const TractiveEffortCurve* used,
                                   Excess&& excess) {
        TractiveEffortCurve* best = nullptr;
        double most = no_excess_force;
        for (TractiveEffortCurve& curve : curves_) {
            if (&curve == used || exhausted_[curve.gear()] || !curve.reaches(road_speed)) continue;
            // Below its lowest sample the clutch slips: a gear is of use only if it gets through
            // that.
            const bool slipping = road_speed < curve.low_speed();
            if (slipping && curve.samples().front().excess_force <= no_excess_force) continue;
            const double here = excess(curve);
            if (here > most) {
                most = here;
                best = &curve;
            }
        }
        return best;
    }

    VehicleSolver& solver_;
    const FullLoadCurve& engine_;
    std::vector<TractiveEffortCurve>& curves_;
    std::vector<bool> exhausted_;  // gears whose end is known not to lie above what is reached
    EquilibriumSpeed reached_;
};

}  // namespace

EquilibriumSpeed find_equilibrium_speed(VehicleSolver& solver, const FullLoadCurve& engine,
                                        std::vector<TractiveEffortCurve>& curves) {
    return Climb(solver, engine, curves).up();
}

double speed_on_curves(VehicleSolver& solver, const FullLoadCurve& engine,
                       std::vector<TractiveEffortCurve>& curves) {
    return Climb(solver, engine, curves).up_on_curves();
}

}  // namespace windwall::solve
