#pragma once
#include "windwall/numerics/spline.hpp"
#include "windwall/numerics/table.hpp"
#include "windwall/solve/point/point.hpp"

#include <variant>
#include <vector>

namespace windwall::solve {

/// What sets the torque at full throttle. From one to the next its slope over engine speed jumps,
/// and where the throttle is held back so may the torque itself.
enum class Regime { best_spark, late_spark, held_back };
Regime regime(const Point& point) noexcept;

/// A solved torque at an engine speed.
struct TorqueNode {
    double engine_speed{};
    double torque{};
    Regime regime{};
};

/// Torque between solved nodes: a spline through those of one regime, a monotone cubic where a
/// throttle held back makes it steep, and a straight line from one regime to the next.
class TorqueOverSpeed {
public:
    /// Nodes by rising engine speed, at least one.
    explicit TorqueOverSpeed(std::vector<TorqueNode> nodes);
    TorqueOverSpeed() = default;

    double at(double engine_speed) const noexcept;

private:
    struct Piece {
        double high{};
        std::variant<numerics::Spline, numerics::Table> torque;
    };
    void add(const std::vector<TorqueNode>& nodes, std::size_t from, std::size_t to);

    std::vector<Piece> pieces_;
};

}  // namespace windwall::solve
