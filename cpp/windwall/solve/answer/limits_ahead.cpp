#include "windwall/solve/answer/limits_ahead.hpp"

#include "windwall/solve/answer/binding.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace windwall::solve {
namespace {

constexpr double last_of_the_way = 0.02;  // of the speed, over which a slope is taken at least
constexpr double line_holds = 0.25;       // of the speed further: chosen by the project
constexpr std::string_view of_the_road = "road/speed";  // whose line is straight to any length

/// A point of the way from which the line to its end is drawn; none in a gear that just came in.
const FullThrottlePoint* start_of_line(const std::vector<const FullThrottlePoint*>& way) {
    const FullThrottlePoint& end = *way.back();
    const auto found = std::find_if(way.rbegin(), way.rend(), [&](const FullThrottlePoint* one) {
        return one->gear == end.gear && one->road_speed <= end.road_speed * (1 - last_of_the_way);
    });
    return found == way.rend() ? nullptr : *found;
}

/// m/s further to where a limit is met; nothing where it is passed already or drawn away from.
std::optional<double> further(const Limit& limit, double there, double slope) {
    if (passes(limit, there)) return std::nullopt;
    if (limit.max && slope > 0) return (*limit.max - there) / slope;
    if (limit.min && slope < 0) return (*limit.min - there) / slope;
    return std::nullopt;
}

/// How much faster a limit is told of, over the speed there is.
double farthest(const Limit& limit, const EquilibriumSpeed& equilibrium,
                const vehicle::Vehicle& vehicle) {
    const bool on_the_road = limit.address == of_the_road;
    if (equilibrium.stop == StopReason::rev_limit) return on_the_road ? INFINITY : 0;
    const double revs = share_to_rev_limit(equilibrium, vehicle);
    return on_the_road ? revs : std::min(revs, line_holds);
}

}  // namespace

std::vector<LimitAhead> limits_ahead(const TopSpeed& found, const LimitWatch& watch,
                                     const vehicle::Vehicle& vehicle) {
    std::vector<LimitAhead> ahead;
    if (!found.equilibrium.full_throttle) return ahead;
    const FullThrottlePoint& end = *found.equilibrium.full_throttle;
    const FullThrottlePoint* start = start_of_line(acceleration_path(found));
    if (!start) return ahead;
    for (std::size_t k = 0; k < watch.limits().size(); ++k) {
        const Limit& limit = watch.limits()[k];
        const double slope =
            (end.watched[k] - start->watched[k]) / (end.road_speed - start->road_speed);
        const std::optional<double> speed = further(limit, end.watched[k], slope);
        if (!speed || *speed > farthest(limit, found.equilibrium, vehicle) * end.road_speed)
            continue;
        ahead.push_back({limit.address, limit.max, limit.min, limit.why, end.watched[k],
                         *speed / end.road_speed, *speed});
    }
    std::ranges::stable_sort(ahead, {}, &LimitAhead::share);
    return ahead;
}

}  // namespace windwall::solve
