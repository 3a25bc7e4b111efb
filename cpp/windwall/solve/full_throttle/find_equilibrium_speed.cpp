#include "windwall/solve/climb.hpp"

#include "windwall/numerics/root.hpp"
#include "windwall/solve/summit.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr double no_surplus = 1e-6;  // N
constexpr double no_gain = 1e-9;     // of the speed

double surplus(const Puller& puller, const GearCurve& curve, double road_speed) {
    return curve.thrust(road_speed) - puller.load(road_speed).total();
}

/// Where the curve of one gear meets the road load, going up from a speed, or its end.
Sample end_of(const Puller& puller, const GearCurve& curve, double from) {
    const auto& samples = curve.samples();
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
        const Sample &below = samples[i], &above = samples[i + 1];
        if (above.road_speed <= from || above.surplus > 0) continue;
        const double start = std::max(from, below.road_speed);
        const auto excess = [&](double speed) { return surplus(puller, curve, speed); };
        const auto root = numerics::find_root(excess, start, above.road_speed, {0, 1e-7, 60});
        const double share = (root.x - below.road_speed) / (above.road_speed - below.road_speed);
        return {below.along + share * (above.along - below.along), root.x, 0, 0, true, false};
    }
    return samples.back();
}

/// The gear with the largest surplus at a speed that it can still exceed, if any.
GearCurve* onward(const Puller& puller, std::vector<GearCurve>& curves, double road_speed,
                  const GearCurve* used) {
    GearCurve* best = nullptr;
    double most = no_surplus;
    for (GearCurve& curve : curves) {
        if (&curve == used || !curve.reaches(road_speed)) continue;
        // Below its lowest sample the clutch slips: a gear is of use only if it gets through that.
        const bool slipping = road_speed < curve.low_speed();
        if (slipping && curve.samples().front().surplus <= no_surplus) continue;
        const double here = surplus(puller, curve, road_speed);
        if (here > most) {
            most = here;
            best = &curve;
        }
    }
    return best;
}

/// Up through the gears on the curves alone, to where no gear has surplus.
Sample follow(const Puller& puller, std::vector<GearCurve>& curves, double from, GearCurve*& gear) {
    Sample end = end_of(puller, *gear, from);
    while (GearCurve* next = onward(puller, curves, end.road_speed, gear)) {
        const Sample further = end_of(puller, *next, end.road_speed);
        if (further.road_speed <= end.road_speed * (1 + no_gain)) break;
        end = further;
        gear = next;
    }
    return end;
}

}  // namespace

Summit climb(Puller& puller, const EngineCurve& engine, std::vector<GearCurve>& curves) {
    Summit summit;
    GearCurve* gear = onward(puller, curves, 0, nullptr);
    while (gear != nullptr) {
        const Sample end = follow(puller, curves, summit.road_speed, gear);
        if (summit.pull && end.road_speed <= summit.road_speed * (1 + no_gain)) break;
        summit = summit_near(puller, engine, gear->gear(), end.along);
        if (!summit.pull->point.verdict.answered()) break;
        gear->pass_through(*summit.pull);
        gear = onward(puller, curves, summit.road_speed, gear);
    }
    return summit;
}

}  // namespace windwall::solve
