#include "windwall/solve/full_throttle/acceleration_path.hpp"

#include <algorithm>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double close = 2e-3;  // of the thrust: what two curves may differ by and still be level

bool pushes_hardest(const std::vector<TractiveEffortCurve>& curves,
                    const FullThrottlePoint& full_throttle) {
    return std::none_of(curves.begin(), curves.end(), [&](const TractiveEffortCurve& other) {
        return other.gear() != full_throttle.gear && other.reaches(full_throttle.road_speed) &&
               other.thrust(full_throttle.road_speed) > full_throttle.thrust * (1 + close);
    });
}

}  // namespace

std::vector<const FullThrottlePoint*> acceleration_path(const TopSpeed& found) {
    std::vector<const FullThrottlePoint*> way;
    for (const FullThrottlePoint& full_throttle : found.full_throttle_points) {
        if (full_throttle.road_speed > found.equilibrium.road_speed * (1 + 1e-9)) continue;
        if (full_throttle.gear == found.equilibrium.gear ||
            pushes_hardest(found.curves, full_throttle))
            way.push_back(&full_throttle);
    }
    if (found.equilibrium.full_throttle) way.push_back(&*found.equilibrium.full_throttle);
    std::stable_sort(way.begin(), way.end(),
                     [](const FullThrottlePoint* a, const FullThrottlePoint* b) {
                         return a->road_speed < b->road_speed;
                     });
    return way;
}

double least_margin(const TopSpeed& found) {
    double least = std::numeric_limits<double>::infinity();
    for (const FullThrottlePoint* full_throttle : acceleration_path(found))
        least = std::min(least, full_throttle->point.spark.margin);
    return least;
}

}  // namespace windwall::solve
