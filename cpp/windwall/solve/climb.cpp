#include "windwall/solve/climb.hpp"

#include "windwall/numerics/root.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::solve {
namespace {

constexpr double engine_speed_tolerance = 1e-8;  // relative
constexpr int most_secants = 8;
constexpr double no_surplus = 1e-6;  // N

/// Where the surplus of one gear ends, going up from a speed.
struct End {
    double road_speed;
    Pull pull;
    Stop stop;
};

double surplus(const Puller& puller, const GearCurve& curve, double road_speed) {
    return curve.thrust(road_speed) - puller.load(road_speed).total();
}

/// The engine speed at which the interpolated thrust of a gear meets the road load.
double near_balance(const Puller& puller, const GearCurve& curve, const Pull& below,
                    const Pull& above) {
    const auto excess = [&](double speed) { return surplus(puller, curve, speed); };
    const auto root =
        numerics::find_root(excess, below.road_speed, above.road_speed, {0, 1e-9, 60});
    const double share = (root.x - below.road_speed) / (above.road_speed - below.road_speed);
    const double low = below.point.condition.engine_speed;
    return low + share * (above.point.condition.engine_speed - low);
}

/// Solves for the engine speed between two samples at which the thrust equals the road load: a few
/// secants from where the interpolated curve meets it, and brackets should they go astray.
End balance(Puller& puller, const GearCurve& curve, const Pull& below, const Pull& above) {
    Pull pull;
    const auto excess = [&](double engine_speed) {
        pull = puller.at(engine_speed, below.gear);
        return pull.surplus();
    };
    const double low = below.point.condition.engine_speed;
    const double high = above.point.condition.engine_speed;
    double last = low, last_excess = below.surplus();
    double here = near_balance(puller, curve, below, above);
    bool close = false;
    for (int i = 0; i < most_secants && !close && here > low && here < high; ++i) {
        const double now = excess(here);
        const double next = here - now * (here - last) / (now - last_excess);
        close = std::abs(next - here) <= engine_speed_tolerance * here;
        last = here;
        last_excess = now;
        here = next;
    }
    if (!close) {
        const numerics::Bracket ends{low, high, below.surplus(), above.surplus(), 0, true};
        excess(numerics::find_root(excess, ends, {0, engine_speed_tolerance, 60}).x);
    }
    return {pull.road_speed, pull, pull.grips ? Stop::balance : Stop::grip};
}

End end_of(Puller& puller, const GearCurve& curve, double from) {
    const auto& pulls = curve.pulls();
    for (std::size_t i = 0; i + 1 < pulls.size(); ++i) {
        if (pulls[i + 1].road_speed <= from || pulls[i + 1].surplus() > 0) continue;
        if (pulls[i].surplus() > 0) return balance(puller, curve, pulls[i], pulls[i + 1]);
        return {from, pulls[i + 1], Stop::balance};  // between two samples the surplus had ended
    }
    return {curve.high_speed(), pulls.back(), Stop::rev_limit};
}

/// The gear with the largest surplus at a speed that it can still exceed, if any.
const GearCurve* onward(const Puller& puller, const std::vector<GearCurve>& curves,
                        double road_speed, const GearCurve* used) {
    const GearCurve* best = nullptr;
    double most = no_surplus;
    for (const GearCurve& curve : curves) {
        if (&curve == used || !curve.reaches(road_speed)) continue;
        // Below its lowest sample the clutch slips: a gear is of use only if it gets through that.
        const bool slipping = road_speed < curve.low_speed();
        if (slipping && curve.pulls().front().surplus() <= no_surplus) continue;
        const double here = surplus(puller, curve, road_speed);
        if (here > most) {
            most = here;
            best = &curve;
        }
    }
    return best;
}

}  // namespace

Summit climb(Puller& puller, const std::vector<GearCurve>& curves) {
    Summit summit;
    const GearCurve* gear = onward(puller, curves, 0, nullptr);
    while (gear != nullptr) {
        const End end = end_of(puller, *gear, summit.road_speed);
        if (end.road_speed <= summit.road_speed && summit.pull) break;
        summit = {end.stop, end.road_speed, gear->gear(), end.pull};
        gear = onward(puller, curves, end.road_speed, gear);
    }
    return summit;
}

}  // namespace windwall::solve
