#include "windwall/solve/way_up.hpp"

#include <algorithm>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double close = 2e-3;  // of the thrust: what two curves may differ by and still be level

bool pushes_hardest(const std::vector<GearCurve>& curves, const Pull& pull) {
    return std::none_of(curves.begin(), curves.end(), [&](const GearCurve& other) {
        return other.gear() != pull.gear && other.reaches(pull.road_speed) &&
               other.thrust(pull.road_speed) > pull.thrust * (1 + close);
    });
}

}  // namespace

std::vector<const Pull*> way_up(const TopSpeed& found) {
    std::vector<const Pull*> way;
    for (const Pull& pull : found.pulls) {
        if (pull.road_speed > found.summit.road_speed * (1 + 1e-9)) continue;
        if (pull.gear == found.summit.gear || pushes_hardest(found.curves, pull))
            way.push_back(&pull);
    }
    if (found.summit.pull) way.push_back(&*found.summit.pull);
    std::stable_sort(way.begin(), way.end(),
                     [](const Pull* a, const Pull* b) { return a->road_speed < b->road_speed; });
    return way;
}

double least_margin(const TopSpeed& found) {
    double least = std::numeric_limits<double>::infinity();
    for (const Pull* pull : way_up(found))
        least = std::min(least, pull->point.spark.margin);
    return least;
}

}  // namespace windwall::solve
