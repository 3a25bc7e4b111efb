#include "windwall/solve/full_throttle/torque_over_speed.hpp"

#include <cmath>

namespace windwall::solve {
namespace {

constexpr double steep = 0.05;  // from node to node, beyond which a spline would swing

bool is_steep(const std::vector<double>& torques) noexcept {
    for (std::size_t i = 0; i + 1 < torques.size(); ++i)
        if (std::abs(torques[i + 1] - torques[i]) > steep * std::abs(torques[i])) return true;
    return false;
}

double value(const numerics::Spline& spline, double speed) noexcept { return spline.at(speed); }
double value(const numerics::Table& table, double speed) noexcept { return table.at(speed).value; }

}  // namespace

Regime regime(const Point& point) noexcept {
    if (point.outcome.status == Status::knock_limited) return Regime::held_back;
    return point.spark.retard > 0 ? Regime::late_spark : Regime::best_spark;
}

TorqueOverSpeed::TorqueOverSpeed(std::vector<TorqueNode> nodes) {
    if (nodes.size() == 1) {  // it launches where it ends
        nodes.push_back(nodes.front());
        nodes.back().engine_speed += 1;
    }
    for (std::size_t from = 0; from + 1 < nodes.size();) {
        std::size_t to = from + 1;
        while (nodes[from].regime == nodes[to].regime && to + 1 < nodes.size() &&
               nodes[to + 1].regime == nodes[from].regime)
            ++to;
        add(nodes, from, to);
        from = to;
    }
}

void TorqueOverSpeed::add(const std::vector<TorqueNode>& nodes, std::size_t from, std::size_t to) {
    std::vector<double> speeds, torques;
    for (std::size_t i = from; i <= to; ++i) {
        speeds.push_back(nodes[i].engine_speed);
        torques.push_back(nodes[i].torque);
    }
    const bool swings = nodes[from].regime == Regime::held_back && is_steep(torques);
    if (speeds.size() == 2 || (!swings && speeds.size() <= numerics::Spline::most_points)) {
        pieces_.push_back({speeds.back(), numerics::Spline(speeds, torques)});
    } else {
        pieces_.push_back(
            {speeds.back(), numerics::Table(speeds, torques, numerics::Interpolation::monotone)});
    }
}

double TorqueOverSpeed::at(double engine_speed) const noexcept {
    std::size_t i = 0;
    while (i + 1 < pieces_.size() && engine_speed > pieces_[i].high)
        ++i;
    return std::visit([&](const auto& piece) { return value(piece, engine_speed); },
                      pieces_[i].torque);
}

}  // namespace windwall::solve
