#pragma once
#include "windwall/solve/point/point.hpp"

#include <vector>

namespace windwall::solve {

/// Where the points of one engine are solved from: from what the points solved before let expect.
class Starts {
public:
    /// A point that was answered, and where it left its solver.
    void add(double engine_speed, const PointSolver::State& state);

    bool empty() const noexcept { return all_.empty(); }
    /// The start nearest to an engine speed, rad/s, its unknowns moved on by the polynomial through
    /// the nearest few. A kink in them, where the spark begins to be late or a throttle to be held
    /// back, costs evaluations and no digit. There must be one.
    PointSolver::State expected_at(double engine_speed) const;

private:
    struct Start {
        double engine_speed;
        PointSolver::State state;
    };
    std::vector<const Start*> beside(double engine_speed) const;

    std::vector<Start> all_;
};

}  // namespace windwall::solve
