#include "windwall/solve/full_throttle/acceleration_path.hpp"

#include <algorithm>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double close = 2e-3;  // of the thrust: what two curves may differ by and still be level

bool pushes_hardest(const std::vector<TractiveEffortCurve>& curves, const FullThrottlePoint& pull) {
    return std::none_of(curves.begin(), curves.end(), [&](const TractiveEffortCurve& other) {
        return other.gear() != pull.gear && other.reaches(pull.road_speed) &&
               other.thrust(pull.road_speed) > pull.thrust * (1 + close);
    });
}

}  // namespace

std::vector<const FullThrottlePoint*> acceleration_path(const TopSpeed& found) {
    std::vector<const FullThrottlePoint*> way;
    for (const FullThrottlePoint& pull : found.pulls) {
        if (pull.road_speed > found.equilibrium.road_speed * (1 + 1e-9)) continue;
        if (pull.gear == found.equilibrium.gear || pushes_hardest(found.curves, pull))
            way.push_back(&pull);
    }
    if (found.equilibrium.pull) way.push_back(&*found.equilibrium.pull);
    std::stable_sort(way.begin(), way.end(),
                     [](const FullThrottlePoint* a, const FullThrottlePoint* b) {
                         return a->road_speed < b->road_speed;
                     });
    return way;
}

double least_margin(const TopSpeed& found) {
    double least = std::numeric_limits<double>::infinity();
    for (const FullThrottlePoint* pull : acceleration_path(found))
        least = std::min(least, pull->point.spark.margin);
    return least;
}

}  // namespace windwall::solve
