#include "windwall/solve/full_throttle/road_effect.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double no_effect = 1e-9;  // of the torque
constexpr double farthest = 0.5;    // e-folds of road speed read beyond the measured ones

}  // namespace

bool same_torque(const FullThrottlePoint& a, const FullThrottlePoint& b) noexcept {
    return std::abs(a.point.torque - b.point.torque) <= no_effect * std::abs(a.point.torque);
}

RoadEffect::RoadEffect(const std::vector<FullThrottlePoint>& points) {
    std::vector<const FullThrottlePoint*> order;
    for (const FullThrottlePoint& point : points)
        order.push_back(&point);
    const auto speed = [](const FullThrottlePoint* of) { return of->point.condition.road_speed; };
    std::sort(order.begin(), order.end(),
              [&](const auto* a, const auto* b) { return speed(a) < speed(b); });
    std::vector<double> speeds, shares;
    for (const FullThrottlePoint* point : order) {
        const double log = std::log(speed(point));
        if (!speeds.empty() && log - speeds.back() < 1e-3) continue;
        speeds.push_back(log);
        shares.push_back(point->point.torque / order.back()->point.torque);
    }
    any_ = speeds.size() > 1 && std::any_of(shares.begin(), shares.end(), [](double share) {
               return std::abs(share - 1) > no_effect;
           });
    if (!any_) return;
    slowest_ = speeds.front();
    fastest_ = speeds.back();
    share_ = {speeds, shares};
}

double RoadEffect::share(double road_speed) const noexcept {
    if (!any_) return 1;
    const double log = std::log(std::max(road_speed, 0.1));
    return share_.at(std::clamp(log, slowest_ - farthest, fastest_ + farthest));
}

}  // namespace windwall::solve
