#include "windwall/solve/answer/limits_ahead.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace windwall::solve {
namespace {

constexpr std::string_view road_speed = "road/speed";

/// The equilibrium and the points of its gear that are faster, in their order.
std::vector<const FullThrottlePoint*> beyond(const TopSpeed& found) {
    const FullThrottlePoint& end = *found.equilibrium.full_throttle;
    std::vector<const FullThrottlePoint*> way{&end};
    for (const FullThrottlePoint& one : found.full_throttle_points)
        if (one.gear == end.gear && one.road_speed > end.road_speed) way.push_back(&one);
    std::ranges::stable_sort(way, {}, &FullThrottlePoint::road_speed);
    return way;
}

/// m/s at which a limit that holds at the first of these points is met; nothing where it is not.
std::optional<double> met(const Limit& limit, std::size_t k,
                          const std::vector<const FullThrottlePoint*>& way) {
    for (std::size_t i = 1; i < way.size(); ++i) {
        const double from = way[i - 1]->watched[k], to = way[i]->watched[k];
        if (!passes(limit, to)) continue;
        const double bound = limit.max && to > *limit.max ? *limit.max : *limit.min;
        const double share = std::isnan(from) ? 1 : (bound - from) / (to - from);
        return std::lerp(way[i - 1]->road_speed, way[i]->road_speed, share);
    }
    return std::nullopt;
}

}  // namespace

std::vector<LimitAhead> limits_ahead(const TopSpeed& found, const LimitWatch& watch) {
    std::vector<LimitAhead> ahead;
    if (!found.equilibrium.full_throttle) return ahead;
    const std::vector<const FullThrottlePoint*> way = beyond(found);
    const FullThrottlePoint& end = *way.front();
    for (std::size_t k = 0; k < watch.limits().size(); ++k) {
        const Limit& limit = watch.limits()[k];
        if (std::isnan(end.watched[k]) || passes(limit, end.watched[k])) continue;
        const std::optional<double> speed =
            limit.address == road_speed ? limit.max : met(limit, k, way);
        if (!speed) continue;
        const double further = *speed - end.road_speed;
        ahead.push_back({limit.address, limit.max, limit.min, limit.why, end.watched[k],
                         further / end.road_speed, further});
    }
    std::ranges::stable_sort(ahead, {}, &LimitAhead::share);
    return ahead;
}

}  // namespace windwall::solve
