#pragma once
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/answer/curve.hpp"
#include "windwall/solve/full_throttle/vehicle_solver.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <vector>

namespace windwall::solve {

/// Writes one point after the other into the columns of a curve. All of them are of the road, or
/// all of the engine alone.
class Recorder {
public:
    explicit Recorder(OperatingPoint start = {}) : point_(std::move(start)) {}

    /// A point of the road; `balance` must be where it left it.
    void add(const vehicle::Balance& balance, const FullThrottlePoint& on_road);
    /// A point of the road that nothing was solved of but what was asked.
    void add(const FullThrottlePoint& on_road);
    /// A point of the engine alone.
    void add(const vehicle::Balance& balance, const Point& point);

    Curve take() { return std::move(curve_); }

private:
    void find_paths();
    void write(const Outcome& outcome);

    OperatingPoint point_;
    std::vector<fields::FieldPath> paths_;
    Curve curve_;
};

/// One point without numbers, where a curve broke off.
Curve broken_curve(std::size_t gear);

}  // namespace windwall::solve
